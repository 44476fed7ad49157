#!/usr/bin/env bash
# Mutation tests of the physics and of the rule evaluator: how many small defects would the tests notice? Long; not part of run.sh.
#   bash tests/mutate.sh [physics|rules]
# Fails below 80 % killed, and on a score of 0, which means that the tool saw no test rather than that every mutant lived.
set -uo pipefail
cd "$(dirname "$0")" || exit 1
(cd .. && dotnet tool restore) || exit 1

status=0
for part in ${1:-physics rules}; do
  rm -rf "StrykerOutput/$part"
  dotnet stryker --config-file "stryker-$part.json" --output "StrykerOutput/$part" || status=1
  report="StrykerOutput/$part/reports/mutation-report.json"
  killed=$(grep -o '"status": *"\(Killed\|Timeout\)"' "$report" 2>/dev/null | wc -l)
  if [ "$killed" -eq 0 ]; then
    echo "$part: no mutant was killed: the tests were not seen."
    status=1
  else
    echo "$part: $killed mutants killed"
  fi
done
exit $status
