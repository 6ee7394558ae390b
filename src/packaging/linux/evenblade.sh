#!/bin/sh
# Starts Evenblade with the Java runtime that lies beside it, whatever else is installed.
#   AOTCache       what was learned at packaging: classes ready to use, methods known to be hot
#   Xlog:disable   where the cache doesn't fit the machine, it is left out without a word among the figures
#   UseSerialGC, Tier4BackEdgeThreshold: measured, see docs/performance.md
set -e
here=$(dirname "$(readlink -f "$0")")
lib=$here/../lib
exec "$lib/runtime/bin/java" -XX:+UseSerialGC -XX:Tier4BackEdgeThreshold=200000 -Xlog:disable -Xlog:all=error:stderr \
    -XX:AOTCache="$lib/evenblade.aot" -cp "$lib/evenblade.jar:$lib/rehearsal.jar" MAIN_CLASS "$@"
