#!/usr/bin/env bash
# Packs the program and the library from a copy of the sources, and proves both: the tool is installed and run, and a new console program restores the
# library from the folder of packages and runs what README.md shows. Each has its bill of materials beside it (CycloneDX), and is packed twice, in two
# folders, to one hash. `tests/pack.sh FOLDER` leaves packages and bills in that folder. Says what failed, and ends with 1 then.
set -euo pipefail
to=${1:+$(realpath --canonicalize-missing "$1")}
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
export DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=${DOTNET_SYSTEM_GLOBALIZATION_INVARIANT:-1}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
fail() { echo "pack: $*" >&2; exit 1; }

mkdir "$work/packages" "$work/again" "$work/use"
# The file of the bill's tool may name a version that a registry lacks; another one tells the same.
wanted=$(sed --quiet '/"cyclonedx"/,/}/s/.*"version": "\(.*\)".*/\1/p' .config/dotnet-tools.json)
for version in "--version=$wanted" ""; do
  dotnet tool install CycloneDX $version --tool-path "$work/bill" >"$work/bill.log" 2>&1 && break
done
[ -x "$work/bill/dotnet-CycloneDX" ] || { cat "$work/bill.log" >&2; fail "the tool that writes bills of materials can't be installed"; }

# Folder of the copy, folder of its packages.
pack() {
  mkdir -p "$1"
  tar --create --exclude=bin --exclude=obj src catalog rules reports Directory.Build.props Directory.Packages.props global.json .editorconfig README.md LICENSE | tar --extract --directory "$1"
  for project in src/FitCheck.Cli src/FitCheck.Reports/Package; do
    (cd "$1" && dotnet pack "$project" --configuration Release --output "$2" -p:Precompile=false >"$work/pack.log" 2>&1) || { cat "$work/pack.log" >&2; fail "$project can't be packed"; }
  done
}
pack "$work/copy" "$work/packages"
# Another folder, at another time.
pack "$work/elsewhere/copy" "$work/again"
if grep --quiet DeterministicTimestamp "$(dotnet --info | sed --quiet 's/^ *Base Path: *//p')/NuGet.Build.Tasks.Pack.targets"; then
  for package in "$work"/packages/*.nupkg; do
    cmp --quiet "$package" "$work/again/$(basename "$package")" || fail "two packs of $(basename "$package") differ"
  done
else
  echo "this SDK dates what it packs: that two packs are one is not looked at"
fi

# What a package brings along, by name, version and hash, as it was restored for it.
bill() {
  "$work/bill/dotnet-CycloneDX" "$work/copy/$2" --disable-package-restore --recursive --no-serial-number --output-format Json \
    --output "$work/packages" --filename "$1.cdx.json" --set-name "${1%%.[0-9]*}" --set-version "${1##*[a-z].}" "${@:3}" >"$work/bill.log" 2>&1 || { cat "$work/bill.log" >&2; fail "$1 has no bill of materials"; }
  # one commit, one bill
  sed --in-place '/^ *"timestamp": /d' "$work/packages/$1.cdx.json"
}
library=$(echo "$work"/packages/FitCheck.[0-9]*.nupkg)
tool=$(echo "$work"/packages/FitCheck.Cli.*.nupkg)
bill "$(basename "$library" .nupkg)" src/FitCheck.Reports/Package/FitCheck.Package.csproj --base-intermediate-output-path "$work/copy/src/FitCheck.Reports/obj/package"
bill "$(basename "$tool" .nupkg)" src/FitCheck.Cli/FitCheck.Cli.csproj
# All packages that a program says it runs on, which are more than one.
billed() {
  local named=0 package
  while read -r package; do
    grep --quiet --fixed-strings "\"pkg:nuget/${package/\//@}\"" "$1" || fail "$(basename "$1") has no $package"
    named=$((named + 1))
  done < <(sed --quiet '/"libraries": {/,$p' "$2" | grep --before-context=1 '"type": "package"' | sed --quiet 's/^ *"\(.*\)": {$/\1/p' | grep --invert-match '^FitCheck/')
  [ "$named" -gt 1 ] || fail "$(basename "$2") names $named packages"
}
billed "${tool%.nupkg}.cdx.json" "$work/copy/src/FitCheck.Cli/bin/Release/net10.0/publish/fitcheck.deps.json"
billed "${tool%.nupkg}.cdx.json" "$work/copy/src/FitCheck.Cli/bin/Release/net10.0/publish/fitcheck-page.deps.json"
# The names of what a package holds stand in it as they are; the rest is compressed.
holds() { grep --quiet --text --fixed-strings "$2" "$1" || fail "$(basename "$1") has no $2"; }
for package in "$library" "$tool"; do
  holds "$package" README.md
  holds "$package" LICENSE
done
for assembly in FitCheck.Core FitCheck.Physics FitCheck.Reports; do
  holds "$library" "lib/net10.0/$assembly.dll"
  holds "$library" "lib/net10.0/$assembly.xml"
done

# A caller's own cache of packages, so that none of an earlier run is taken for this one; what was fetched before need not be fetched again.
fetched=$(dotnet nuget locals global-packages --list | sed --quiet 's/^global-packages: //p')
cat >"$work/nuget.config" <<CONFIG
<configuration>
  <config><add key="globalPackagesFolder" value="$work/cache" /></config>
  <fallbackPackageFolders><add key="fetched" value="$fetched" /></fallbackPackageFolders>
  <packageSources><add key="here" value="$work/packages" /></packageSources>
</configuration>
CONFIG

cat >"$work/use/use.csproj" <<PROJECT
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <OutputType>Exe</OutputType>
    <TargetFramework>net10.0</TargetFramework>
    <Nullable>enable</Nullable>
    <ImplicitUsings>enable</ImplicitUsings>
    <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
  </PropertyGroup>
  <ItemGroup><PackageReference Include="FitCheck" Version="$(basename "$library" | sed 's/^FitCheck\.//; s/\.nupkg$//')" /></ItemGroup>
</Project>
PROJECT
sed --quiet '/^```csharp$/,/^```$/{//!p}' README.md >"$work/use/Program.cs"
# The reports too, with the templates that come beside the program.
cat >>"$work/use/Report.cs" <<'PROGRAM'
public static class Report
{
    public static string Html(FitCheck.Evaluation.CheckResult result)
    {
        using var text = new StringWriter();
        FitCheck.Reports.ReportList.Find("html")!.Write(result, FitCheck.Reports.Format.ReportOptions.Default, text);
        return text.ToString();
    }
}
PROGRAM
sed --in-place 's/^return 0;$/Console.WriteLine(Report.Html(checker.Check([BuildSource.File("build.yaml")]).Result!).Length);\n&/' "$work/use/Program.cs"
cp catalog/builds/tansy-bare-tweeter.yaml "$work/use/build.yaml"
(cd "$work/use" && dotnet build --configuration Release --output "$work/use/out" >"$work/build.log" 2>&1) || { cat "$work/build.log" >&2; fail "the program of README.md can't be built on the package"; }
billed "${library%.nupkg}.cdx.json" "$work/use/out/use.deps.json"
# Relative folders are those that the package put beside the program.
said=$(cd "$work/use/out" && cp ../build.yaml . && dotnet use.dll) || fail "the program of README.md ends with $?"
grep --quiet '^fail tweeter/full-range-feed ' <<<"$said" || fail "the program of README.md says: $said"
grep --quiet '^[0-9]\{5,\}$' <<<"$said" || fail "the program can't write the page: $said"

(cd "$work" && dotnet tool install FitCheck.Cli --tool-path "$work/tools" >"$work/tool.log" 2>&1) || { cat "$work/tool.log" >&2; fail "the tool can't be installed"; }
status=0
said=$(cd "$work/use" && FITCHECK_CACHE="$work/notes" "$work/tools/fitcheck" check build.yaml) || status=$?
[ "$status" -eq 1 ] && grep --quiet 'tweeter/full-range-feed' <<<"$said" || fail "the tool ends with $status and says: $said"
# The page's own program lies in the tool too, with its runtime's settings. In the background of a script an interruption is ignored.
(cd "$work/use" && FITCHECK_CACHE="$work/notes" exec "$work/tools/fitcheck" page build.yaml >"$work/address" 2>"$work/page.log") & page=$!
for _ in {1..100}; do [ -s "$work/address" ] && break; sleep 0.2; done
kill "$page" && status=0 && wait "$page" || status=$?
[ "$status" -eq 0 ] && grep --quiet '^http://127\.0\.0\.1:[0-9]*/?token=' "$work/address" || fail "the tool's page ends with $status and says: $(cat "$work/page.log")"
[ -z "$to" ] || { mkdir -p "$to" && cp "$work"/packages/* "$to"; }
echo "both packages are sound"
