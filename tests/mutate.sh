#!/usr/bin/env bash
# Mutation tests of the physics and of the rule evaluator: how many small defects would the tests notice? Long; not part of run.sh.
#   bash tests/mutate.sh [physics|rules]
# Fails below 80 % killed, and when nothing was killed, which means that the tool saw no test rather than that every mutant lived.
# A few long tests are left out of it, as they would be run for thousands of mutants: searches in small steps, simulated noise, random texts.
# Which test reaches which mutant is told by running each test alone: together, what is set up once counts as reached by all.
# Works on a copy, as a run that is broken off leaves mutants in the assemblies. Reports: tests/StrykerOutput.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 MSBUILDDISABLENODEREUSE=1
# The tool first asks for a build that compiles nothing, and without an assembly there is nothing to compile ahead of time.
export Precompile=false RunAnalyzers=false
# Random solids are sampled less often.
export FITCHECK_FEW_CASES=1
# On a busy machine it gives up on asking the SDK for its folder; milliseconds.
export DOTNET_INFO_WAIT_TIME=120000
output=$PWD/tests/StrykerOutput

copy=$(mktemp -d) || exit 1
trap 'rm -rf "$copy"' EXIT
git ls-files -z --cached --others --exclude-standard | xargs -0 cp --parents --target-directory="$copy" || exit 1
cd "$copy/tests" && dotnet tool restore && dotnet build FitCheck.Tests -c Release || exit 1
# Rows of a theory are read when it is run: reading every rule to list the tests would run mutants that no test has reached, at every start.
echo '{"preEnumerateTheories": false}' > FitCheck.Tests/bin/Release/net10.0/xunit.runner.json

# How many mutants of the report ended so.
count() {
  grep -o "\"status\": *\"$1\"" "$report" 2>/dev/null | wc -l
}

status=0
for part in ${1:-physics rules}; do
  report="$output/$part/reports/mutation-report.json"
  rm -rf "${output:?}/$part"
  dotnet stryker --config-file "stryker-$part.json" --output "$output/$part" || status=1
  echo "$part: $(count Killed) killed, $(count Timeout) timed out, $(count Survived) survived, $(count NoCoverage) not covered"
  if [ "$(count Killed)" -eq 0 ]; then
    echo "$part: nothing was killed: the tests were not seen."
    status=1
  fi
done
exit $status
