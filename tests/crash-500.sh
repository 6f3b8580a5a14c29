#!/usr/bin/env bash
# Kills a writing process 500 times (or as often as the first argument says), the whole service and each verb a tenth as often, a process beside
# another on PostgreSQL and the whole database a fiftieth as often, and looks each time whether what was acknowledged is there.
set -euo pipefail
cd "$(dirname "$0")/.."
export PRICEFLOOR_CRASH_ROUNDS=${1:-500}
dotnet run --project tests/PriceFloor.Storage.Tests -- --filter-class '*CrashTests' --show-live-output on
dotnet run --project tests/PriceFloor.Api.Tests -- --filter-class '*KilledServiceTests' '*KilledVerbTests' '*KilledOnServerTests' --show-live-output on
