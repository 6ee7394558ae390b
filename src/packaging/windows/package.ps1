# Makes the .msi for Windows in target\installer. To be run on Windows, with a JDK of 25 or later and WiX (3 or later) on
# the path, after `mvn -B -DskipTests package org.cyclonedx:cyclonedx-maven-plugin:2.9.1:makeBom`. Takes no secrets: the
# package isn't signed. Written without such a machine at hand: whoever runs it first, please say what was wrong.
#   package.ps1 -Jdk FOLDER -Version 0.1.0 -MainClass NAME -Timestamp 2026-01-01T00:00:00Z
param(
    [Parameter(Mandatory)] [string] $Jdk,
    [Parameter(Mandatory)] [string] $Version,
    [Parameter(Mandatory)] [string] $MainClass,
    [Parameter(Mandatory)] [string] $Timestamp
)
$ErrorActionPreference = 'Stop'
Set-Location (Join-Path $PSScriptRoot '..\..\..')
$build = 'src\packaging\build'
$out = 'target\installer'
$parts = "$out\parts"

# A program that ends with anything but 0 ends this script.
function Run([string] $program) {
    & $program @args
    if ($LASTEXITCODE -ne 0) { throw "$program ended with $LASTEXITCODE" }
}

if (Test-Path $out) { Remove-Item -Recurse -Force $out }
New-Item -ItemType Directory -Force "$parts\app", "$parts\notices", "$out\classes", "$out\work" | Out-Null

Run "$Jdk\bin\java.exe" "$build\Frames.java" 'target\evenblade.jar' "$parts\app\evenblade.jar"
Run "$Jdk\bin\javac.exe" -d "$out\classes" "$build\Rehearsal.java"
Run "$Jdk\bin\jar.exe" --create --date $Timestamp --file "$parts\app\rehearsal.jar" -C "$out\classes" .
$modules = & "$Jdk\bin\jdeps.exe" --multi-release 25 --ignore-missing-deps --print-module-deps "$parts\app\evenblade.jar"
# jdk.accessibility: the bridge to the screen readers of this system.
Run "$Jdk\bin\jlink.exe" --add-modules "$modules,jdk.accessibility" --strip-debug --no-header-files --no-man-pages --output "$parts\runtime"
Run "$Jdk\bin\java.exe" "$build\Icon.java" "$out\evenblade.ico" 16 32 48 256

Push-Location "$parts\notices"
Run "$Jdk\bin\jar.exe" --extract --file '..\..\..\evenblade.jar' 'META-INF/licences'
Move-Item 'META-INF\licences' 'libraries'
Remove-Item 'META-INF'
Pop-Location
Copy-Item LICENSE, target\bom.json, target\bom.xml "$parts\notices"
Copy-Item -Recurse "$parts\runtime\legal" "$parts\notices\java"
# An even second: the installer keeps times to two seconds only, and the cache holds only for files of the same time.
Get-ChildItem -Recurse -File $parts | ForEach-Object { $_.LastWriteTimeUtc = [datetime]::Parse($Timestamp).ToUniversalTime() }

# evenblade.exe opens the window; evenblade-console.exe is for the command line.
Set-Content "$out\console.properties" "win-console=true"
Run "$Jdk\bin\jpackage.exe" --type app-image --name evenblade --app-version $Version --vendor 'The Evenblade authors' `
    --input "$parts\app" --main-jar evenblade.jar --main-class $MainClass --runtime-image "$parts\runtime" `
    --java-options '-XX:+UseSerialGC' --java-options '-Xlog:disable' --java-options '-Xlog:all=error:stderr' `
    --java-options '-XX:AOTCache=$APPDIR\job.aot' `
    --add-launcher "evenblade-console=$out\console.properties" --icon "$out\evenblade.ico" --dest $out
Copy-Item -Recurse "$parts\notices" "$out\evenblade\notices"

# The rehearsal, with the same runtime and the jars where they will lie.
$inside = "$out\evenblade\app"
Run "$parts\runtime\bin\java.exe" '-XX:+UseSerialGC' "-XX:AOTCacheOutput=$inside\job.aot" -cp "$inside\evenblade.jar;$inside\rehearsal.jar" `
    Rehearsal $MainClass samples "$out\work" job

Set-Content "$out\wav.properties" "extension=wav`nmime-type=audio/x-wav`ndescription=Recording"
Set-Content "$out\csv.properties" "extension=csv`nmime-type=text/csv`ndescription=Table"
Run "$Jdk\bin\jpackage.exe" --type msi --name evenblade --app-version $Version --app-image "$out\evenblade" `
    --license-file LICENSE --win-menu --win-shortcut-prompt --win-dir-chooser --win-per-user-install `
    --file-associations "$out\wav.properties" --file-associations "$out\csv.properties" --dest $out
Get-ChildItem "$out\*.msi" | ForEach-Object { '{0}  {1}' -f (Get-FileHash $_ -Algorithm SHA256).Hash.ToLower(), $_.Name } |
    Set-Content "$out\SHA256SUMS"
Get-Content "$out\SHA256SUMS"
