#!/usr/bin/env bash
# Changes one operator, bound or condition of the pricing library at a time, never a text, and sees whether a test notices (mutation testing). Works on a copy, without
# the search for the best mix and its tests: they take half a minute, and every change would wait for them.
# mutate-pricing.sh [FILE...], such as Tax.cs Piece.cs; without files the core of the library. Reports are left in artifacts/mutants/report.
set -euo pipefail
cd "$(dirname "$0")/.."
tools=$PWD/artifacts/tools copy=$PWD/artifacts/mutants
[ -x "$tools/dotnet-stryker" ] || dotnet tool install dotnet-stryker --version 5.1.0 --tool-path "$tools" >/dev/null || { echo "skipped: what makes the changes cannot be fetched here"; exit 0; }
rm -rf "$copy" && mkdir -p "$copy"
git ls-files -z src/PriceFloor.Pricing tests/PriceFloor.Pricing.Tests '*.props' global.json .editorconfig | xargs -0 cp --parents -t "$copy"
cd "$copy/tests/PriceFloor.Pricing.Tests"
rm -r Mixes && grep -lE 'Tests\.Mixes' -r --include='*.cs' . | xargs rm
[ $# -gt 0 ] || set -- Tax.cs Depreciation.cs Piece.cs BenchTime.cs FloorPrice.cs Sale.cs Rounding.cs PriceCheck.cs PriceGrid.cs SellingTerms.cs StudioYear.cs BreakEven.cs DesignBudget.cs Markup.cs PriceParts.cs
files=$(printf '"%s",' "$@")
cat >stryker-config.json <<JSON
{ "stryker-config": { "project": "PriceFloor.Pricing.csproj", "test-runner": "mtp", "concurrency": 1, "coverage-analysis": "all", "ignore-mutations": ["string"],
    "reporters": ["json", "cleartext"], "mutate": [${files%,}] } }
JSON
"$tools/dotnet-stryker" --config-file stryker-config.json --skip-version-check --output "$copy/report"
