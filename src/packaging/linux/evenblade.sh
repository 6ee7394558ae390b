#!/bin/sh
# Starts Evenblade with the Java runtime that lies beside it, whatever else is installed.
#   AOTCache       what was learned at packaging: classes ready to use, methods known to be hot. Measuring has its own,
#                  since all classes of a cache are made ready at each start
#   Xlog:disable   where the cache doesn't fit the machine, it is left out without a word among the figures
#   TieredStopAtLevel=1, hot-methods.json, UseSerialGC: measured, see docs/figures.md
#   DisplayVMOutput off: reading hot-methods.json would be told among the figures
#   InitialRAMPercentage, NewRatio: room for all that an analysis makes, so that nothing is cleared away while it lasts;
#                  what isn't used of it is never taken
#   UsePerfData    off: it would leave a file in /tmp where the program is killed
#   fontcache      what was learned about the fonts of this machine, for the PDF
set -e
here=$(dirname "$(readlink -f "$0")")
lib=$here/../lib
hot=
case ${1-} in
    orders)
        kept=measuring
        case "$*" in
            *.csv* | *.txt*) compiler=-XX:TieredStopAtLevel=1 ;;
            *) compiler=-XX:+TieredCompilation hot=$lib/hot-methods.json ;;
        esac
        ;;
    plan | -*) kept=measuring compiler=-XX:TieredStopAtLevel=1 ;;
    *) kept=job compiler=-XX:+TieredCompilation ;;
esac
fonts=${XDG_CACHE_HOME:-${HOME:-/tmp}/.cache}/evenblade
[ $kept = measuring ] || mkdir -p "$fonts" 2>/dev/null || fonts=/tmp
exec "$lib/runtime/bin/java" "$compiler" \
    ${hot:+-XX:+UnlockDiagnosticVMOptions -XX:-DisplayVMOutput "-XX:CompilerDirectivesFile=$hot"} \
    -XX:+UseSerialGC -XX:InitialRAMPercentage=10 -XX:NewRatio=1 -XX:-UsePerfData \
    -Xlog:disable -Xlog:all=error:stderr \
    -Dpdfbox.fontcache="$fonts" -XX:AOTCache="$lib/$kept.aot" -cp "$lib/evenblade.jar:$lib/rehearsal.jar" MAIN_CLASS "$@"
