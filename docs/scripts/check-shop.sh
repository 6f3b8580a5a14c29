#!/usr/bin/env bash
# Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
#   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... ./check-shop.sh listings.csv [cursor file]
# Exit code: 0 all carry their share, 1 some do not, 2 no answer (then nothing must be held up: ask again later).
set -u
url=${PRICEFLOOR_URL:-http://127.0.0.1:5080} sheet=${1:-listings.csv} cursor=${2:-}
ask() { curl --silent --show-error --fail --max-time 30 --retry 2 --header "Authorization: Bearer $PRICEFLOOR_KEY" "$@"; }

answers=$(ask "$url/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price" \
  --header "Content-Type: text/csv" --header "Accept: application/x-ndjson" --data-binary "@$sheet") || { echo "no answer; nothing is held up" >&2; exit 2; }

# One answer a line, in the order of the sheet. Prices are compared by the service, never here.
line=1 below=0
while IFS= read -r answer; do
  item=$(sed -n "$((line + 1))p" "$sheet" | cut -d, -f1)
  case $answer in
    '{"summary"'*) break ;;
    *'"verdict":"below-floor"'*)
      below=1
      echo "$item does not carry its share: floor $(sed -E 's/.*"floorPrice":([0-9.]+).*/\1/' <<<"$answer"), target $(sed -E 's/.*"targetPrice":([0-9.]+).*/\1/' <<<"$answer")" ;;
    *'"status":'*) echo "$item was not answered: $(sed -E 's/.*"detail":"(([^"\\]|\\.)*)","errors.*/\1/; s/\\"/"/g' <<<"$answer")" ;;
  esac
  line=$((line + 1))
done <<<"$answers"

if [ -n "$cursor" ]; then
  since=""
  [ -f "$cursor" ] && since="?since=$(cat "$cursor")"
  changes=$(ask "$url/v1/floor-changes$since") || { echo "no answer; the cursor stays" >&2; exit 2; }
  [ -z "$since" ] || echo "$(grep -o '"oldFloorPrice"' <<<"$changes" | wc -l | tr -d ' ') floors moved since the last run"
  sed -E 's/.*"next":"([^"]+)".*/\1/' <<<"$changes" >"$cursor"
fi
exit "$below"
