#!/usr/bin/env bash
# Changes one operator, bound or condition of the pricing library at a time, never a text, and sees whether a test notices (mutation testing). Works on a copy.
# mutate-pricing.sh [FILE...], such as Years/Tax.cs 'Selling/*.cs'; without files the core of the library, under all tests but those of the search for the best mix: they take
#   half a minute, and every change would wait for them.
# mutate-pricing.sh --search [FILE...], such as Planning/Solver/Branching.cs; without files all of the search, under its own tests alone, with a quarter of the mixes that are listed and without the large years.
# Reports are left in artifacts/mutants/report.
set -euo pipefail
cd "$(dirname "$0")/.."
tools=$PWD/artifacts/tools copy=$PWD/artifacts/mutants
[ -x "$tools/dotnet-stryker" ] || dotnet tool install dotnet-stryker --version 5.1.0 --tool-path "$tools" >/dev/null || { echo "skipped: what makes the changes cannot be fetched here"; exit 0; }
rm -rf "$copy" && mkdir -p "$copy"
git ls-files -z src/PriceFloor.Pricing tests/PriceFloor.Pricing.Tests '*.props' global.json .editorconfig | xargs -0 cp --parents -t "$copy"
cd "$copy/tests/PriceFloor.Pricing.Tests"
if [ "${1:-}" = --search ]; then
    shift
    grep -LE 'Tests\.Planning\.Solver' -r --include='*.cs' . | xargs rm
    rm Planning/Solver/LargeMixes.cs Planning/Solver/IntegerSolver*.cs Properties/MixProperties.cs
    sed -i 's/Cases = 4000/Cases = 1000/' Planning/Solver/EnumeratedMixes.cs
    [ $# -gt 0 ] || set -- "Planning/Solver/*.cs"
else
    rm -r Planning/Solver && grep -lE 'Tests\.Planning\.Solver' -r --include='*.cs' . | xargs rm
fi
[ $# -gt 0 ] || set -- "Numbers/*.cs" "Years/*.cs" "Costing/*.cs" "Selling/*.cs" "Planning/*.cs" "Explaining/*.cs" Documents/FirstNumbers.cs
files=$(printf '"%s",' "$@")
cat >stryker-config.json <<JSON
{ "stryker-config": { "project": "PriceFloor.Pricing.csproj", "test-runner": "mtp", "concurrency": 1, "coverage-analysis": "all", "ignore-mutations": ["string"],
    "reporters": ["json", "cleartext"], "mutate": [${files%,}] } }
JSON
"$tools/dotnet-stryker" --config-file stryker-config.json --skip-version-check --output "$copy/report"
