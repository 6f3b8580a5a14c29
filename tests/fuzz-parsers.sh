#!/usr/bin/env bash
# Attacks the parsers that we wrote ourselves (sheets, JSON lines, JSON arrays, OFX, statements as sheets, lines of the log) with inputs that are kept
# wherever they take new branches; for a nightly run. fuzz-parsers.sh [SECONDS for each, 60] [SEED, the day]. What breaks a parser is left in artifacts/fuzz-parsers.
set -euo pipefail
cd "$(dirname "$0")/.."
tools=$PWD/artifacts/tools out=$PWD/artifacts/parser-fuzzing
[ -x "$tools/sharpfuzz" ] || dotnet tool install SharpFuzz.CommandLine --version 2.3.0 --tool-path "$tools" >/dev/null || { echo "skipped: what counts the branches cannot be fetched here"; exit 0; }
rm -rf "$out"
dotnet publish tests/PriceFloor.ParserFuzzing -c Release -o "$out" -v quiet --nologo
"$tools/sharpfuzz" "$out/PriceFloor.Api.dll" PriceFloor.Api.Sheets PriceFloor.Api.Http.Reading
"$tools/sharpfuzz" "$out/PriceFloor.Evidence.dll" PriceFloor.Evidence.Sheets
"$tools/sharpfuzz" "$out/PriceFloor.Statements.dll"
dotnet "$out/PriceFloor.ParserFuzzing.dll" "${1:-60}" "${2:-$(date +%Y%m%d)}"
