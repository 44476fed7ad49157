#!/usr/bin/env bash
# Coverage-guided fuzzing of everything that reads: the library is instrumented by SharpFuzz, the inputs are made up by AFL++. Not part of run.sh.
#   bash tests/fuzz.sh [runs of each target] [target ...]
# Fails when an input crashes a reader, hangs it for two seconds, or gets an answer without a place. Such inputs: tests/FuzzOutput/TARGET/default/crashes and hangs.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_TieredPGO=0
export AFL_SKIP_BIN_CHECK=1 AFL_NO_UI=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_SKIP_CPUFREQ=1 AFL_NO_AFFINITY=1 AFL_FORKSRV_INIT_TMOUT=60000
runs=${1:-1000000}
shift || true
targets=${*:-yaml quantity expression rule entry build}

if ! command -v afl-fuzz > /dev/null; then
  apt-get install -y -qq afl++ > /dev/null 2>&1 || { echo "afl-fuzz is missing; on Debian: apt-get install afl++"; exit 2; }
fi
output=$PWD/tests/FuzzOutput
dotnet tool restore > /dev/null && dotnet build tests/FitCheck.Fuzz -c Release -p:Precompile=false -p:RunAnalyzers=false --no-incremental -v quiet || exit 1
built=tests/FitCheck.Fuzz/bin/Release/net10.0
for library in FitCheck.Physics.dll FitCheck.Core.dll YamlDotNet.dll; do
  dotnet sharpfuzz "$built/$library" || exit 1
done

# A few inputs from which the fuzzer starts: short ones, as every run reads them.
seeds() {
  mkdir -p "$output/seeds/$1"
  case $1 in
    quantity) i=0; while read -r line; do i=$((i + 1)); printf %s "$line" > "$output/seeds/quantity/$i"; done < tests/cases/fuzz/quantity.txt ;;
    expression) i=0; while read -r line; do i=$((i + 1)); printf %s "$line" > "$output/seeds/expression/$i"; done < tests/cases/fuzz/expression.txt ;;
    rule) cp rules/mount/too-deep.yaml rules/tweeter/full-range-feed.yaml rules/load/below-rated-load.yaml "$output/seeds/rule" ;;
    entry) cp catalog/drivers/orrin-c100.yaml catalog/sundries/ring-100-20.yaml catalog/adapters/spacer-165-flat-10.yaml catalog/harnesses/harness-duo-a-48-28.yaml "$output/seeds/entry" ;;
    build) cp catalog/builds/pellet-too-deep.yaml catalog/builds/pellet-filtered-woofers.yaml catalog/builds/tansy-quote.yaml "$output/seeds/build" ;;
    yaml) cp catalog/builds/pellet-too-deep.yaml catalog/sundries/ring-100-20.yaml "$output/seeds/yaml"; cp tests/cases/bad/crlf-and-bom/build.yaml "$output/seeds/yaml/crlf.yaml" ;;
  esac
}

status=0
for target in $targets; do
  rm -rf "${output:?}/$target" "$output/seeds/$target"
  seeds "$target"
  afl-fuzz -i "$output/seeds/$target" -o "$output/$target" -E "$runs" -t 2000 -m none -- "$built/FitCheck.Fuzz" "$target" > "$output/$target.log" 2>&1
  count() { sed -n "s/^$1 *: *//p" "$output/$target/default/fuzzer_stats" 2> /dev/null; }
  done=$(count execs_done)
  crashes=$(find "$output/$target/default/crashes" -name 'id*' 2> /dev/null | wc -l)
  hangs=$(find "$output/$target/default/hangs" -name 'id*' 2> /dev/null | wc -l)
  echo "$target: ${done:-0} inputs, $(count corpus_count) of them new ways through the code, $crashes crashes, $hangs hangs"
  if [ "${done:-0}" -lt "$runs" ] || [ "$crashes" -gt 0 ] || [ "$hangs" -gt 0 ]; then
    status=1
  fi
done
exit $status
