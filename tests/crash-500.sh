#!/usr/bin/env bash
# Kills a writing process 500 times (or as often as the first argument says) and looks each time whether what it acknowledged is there.
set -euo pipefail
cd "$(dirname "$0")/.."
PRICEFLOOR_CRASH_ROUNDS=${1:-500} dotnet run --project tests/PriceFloor.Storage.Tests -- --filter-class '*CrashTests' --show-live-output on
