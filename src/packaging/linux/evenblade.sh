#!/bin/sh
# Starts Evenblade with the Java runtime that lies beside it, whatever else is installed.
#   AOTCache       what was learned at packaging: classes ready to use, methods known to be hot. Measuring has its own,
#                  since all classes of a cache are made ready at each start
#   Xlog:disable   where the cache doesn't fit the machine, it is left out without a word among the figures
#   UseSerialGC    measured, see docs/performance.md
set -e
here=$(dirname "$(readlink -f "$0")")
lib=$here/../lib
case ${1-} in
    plan | orders | -*) kept=measuring ;;
    *) kept=job ;;
esac
exec "$lib/runtime/bin/java" -XX:+UseSerialGC -Xlog:disable -Xlog:all=error:stderr \
    -XX:AOTCache="$lib/$kept.aot" -cp "$lib/evenblade.jar:$lib/rehearsal.jar" MAIN_CLASS "$@"
