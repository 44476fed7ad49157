#!/usr/bin/env bash
# What strangers send and what bad days bring, made up. Not part of run.sh, which runs a thousand inputs and some twenty kills.
#   bash tests/hostile.sh [inputs] [seed]       mutated builds, entries, rules and tables through every command that reads them (200000)
#   bash tests/hostile.sh kill [kills] [seed]   every command that writes, killed at random moments (500)
# The same seed makes the same inputs. Fails when one ends as a defect, takes five seconds, gets an answer without a place, or leaves half a file;
# the folder with what it was stays and is named.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
dotnet build tests/FitCheck.Hostile -c Release -p:CompileNative=false -p:Precompile=false -p:RunAnalyzers=false -v quiet || exit 1
program=tests/FitCheck.Hostile/bin/Release/net10.0/FitCheck.Hostile.dll
if [ "${1:-}" = kill ]; then
  exec dotnet "$program" kill "${2:-500}" "${3:-1}"
fi
exec dotnet "$program" "${1:-200000}" "${2:-1}"
