#!/usr/bin/env bash
# Sends 20,000 valid, nearly valid and hostile requests, made from our own OpenAPI document, to every operation; for a nightly run.
# fuzz-20000.sh [SEED]: the same seed makes the same requests; without one the day is the seed. A fault tells its seed.
set -euo pipefail
cd "$(dirname "$0")/.."
export PRICEFLOOR_FUZZ_SEED=${1:-$(date +%Y%m%d)} PRICEFLOOR_FUZZ_COUNT=20000
echo "seed $PRICEFLOOR_FUZZ_SEED"
dotnet run --project tests/PriceFloor.Api.Tests -- --filter-method '*Whatever_is_asked_the_answer_is_in_the_contract' --show-live-output on
