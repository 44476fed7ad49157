#!/usr/bin/env bash
# Builds everything in Release, runs every test project and the format check, and ends with one line for all:
# `N passed, N failed`, with `, N skipped` when any was. Fails when anything failed, or when a project ran no test.
# Needs the .NET SDK; on Debian it installs what else the tests call, when that is missing.
set -uo pipefail
cd "$(dirname "$0")/.." || exit 1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en
# the SDK asks for ICU, which nothing here needs
export DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=${DOTNET_SYSTEM_GLOBALIZATION_INVARIANT:-1}

passed=0 failed=0 skipped=0

finish() {
  local line="$passed passed, $failed failed"
  [ "$skipped" -eq 0 ] || line="$line, $skipped skipped"
  echo "$line"
  exit $((failed > 0))
}

# Whether a font's file lies where fontconfig looks; its own programs may be missing.
has_font() {
  [ -n "$(find /usr/share/fonts /usr/local/share/fonts "${XDG_DATA_HOME:-${HOME:-}/.local/share}/fonts" -name "$1" -print -quit 2>/dev/null)" ]
}

# What the tests compare with and look through: a circuit simulator, a browser with a wide and a narrow font, git; and the linker of the quick program.
install_missing() {
  local missing=()
  for program in ngspice chromium git; do
    command -v "$program" >/dev/null || missing+=("$program")
  done
  # gcc by itself only recommends what it links with
  command -v gcc >/dev/null && [ -n "$(gcc -print-file-name=crt1.o | grep /)" ] || missing+=(gcc libc6-dev)
  has_font DejaVuSans.ttf || missing+=(fonts-dejavu-core)
  has_font LiberationSans-Regular.ttf || missing+=(fonts-liberation)
  # by which the SDK fetches packages
  [ -e /etc/ssl/certs/ca-certificates.crt ] || [ -e /etc/pki ] || missing+=(ca-certificates)
  /sbin/ldconfig -p 2>/dev/null | grep -q 'libssl\.so' || missing+=(openssl)
  [ ${#missing[@]} -gt 0 ] || return 0
  local root=()
  [ "$(id -u)" -eq 0 ] || root=(sudo -n)
  echo "Installing ${missing[*]}"
  if ! command -v apt-get >/dev/null ||
     ! { "${root[@]}" apt-get update -qq && DEBIAN_FRONTEND=noninteractive "${root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}"; } >/dev/null; then
    echo "Could not install ${missing[*]}; tests that need them will fail."
  fi
}

# Adds one project's counts, read from its TRX file, to the totals.
add_counts() {
  local name=$1 status=$2 trx=$3 counters total ok skip
  counters=$(grep -o '<Counters [^>]*>' "$trx" 2>/dev/null | head -n 1)
  total=$(count total) ok=$(count passed)
  # a skipped test was counted but neither executed nor failed
  skip=$((total - $(count executed)))
  if [ "$total" -eq 0 ]; then
    echo "$name ran no test."
    failed=$((failed + 1))
    return
  fi
  passed=$((passed + ok)) skipped=$((skipped + skip))
  local bad=$((total - ok - skip))
  # a run that broke off after its last test has failed too
  [ "$status" -eq 0 ] || [ "$bad" -gt 0 ] || bad=1
  failed=$((failed + bad))
}

# One attribute of $counters.
count() {
  local value
  value=$(sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" <<<"$counters")
  echo "${value:-0}"
}

install_missing

if ! dotnet build FitCheck.sln -c Release; then
  echo "The build failed."
  failed=1
  finish
fi

results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT
for project in tests/*/*.csproj; do
  grep -q Microsoft.NET.Test.Sdk "$project" || continue
  name=$(basename "$project" .csproj)
  dotnet test "$project" -c Release --no-build --logger "trx;LogFileName=$name.trx" --results-directory "$results"
  add_counts "$name" $? "$results/$name.trx"
done

if dotnet format FitCheck.sln --verify-no-changes --no-restore; then
  passed=$((passed + 1))
else
  echo "The sources are not formatted: run dotnet format."
  failed=$((failed + 1))
fi

finish
