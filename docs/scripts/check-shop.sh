#!/usr/bin/env bash
# Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
#   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... ./check-shop.sh listings.csv [cursor file]
# Exit code: 0 none is below its floor, 1 some are, 2 no answer (hold nothing up, ask again later), 3 the key, 4 refused otherwise.
set -u
url=${PRICEFLOOR_URL:-http://127.0.0.1:5080} sheet=${1:-listings.csv} cursor=${2:-}
answer=$(mktemp)
trap 'rm -f "$answer"' EXIT

end() { echo "$2" >&2; exit "$1"; }
no_answer() { end 2 "no answer; nothing is held up: $1"; }
texts() { grep -oE "\"$1\":\"([^\"\\\\]|\\\\.)*\"" | sed -E "s/^\"$1\":\"//; s/\"\$//; s/\\\\([\"\\\\])/\\1/g"; }
reason() { # the details of a problem's errors; its own, which is the first, where it has none
  local details; details=$(texts detail)
  [ "$(wc -l <<<"$details")" -eq 1 ] || details=$(tail -n +2 <<<"$details")
  paste -sd ' ' - <<<"$details"
}

ask() { # ask ADDRESS OPTIONS...: leaves the answer in $answer; ends the script if there is none, but fails for a cursor that is refused
  local status # the key comes from a file, so no list of processes shows it
  status=$(curl --silent --show-error --max-time 30 --retry 2 --retry-max-time 30 --output "$answer" --write-out '%{http_code}' \
    --header @<(echo "Authorization: Bearer ${PRICEFLOOR_KEY:-}") "$url$@") || no_answer "curl ended with $?"
  case $status in
    200) ;;
    401) end 3 "no key that is known (401): $(reason <"$answer") Set PRICEFLOOR_KEY to a key with the scope check." ;;
    403) end 3 "the key may not do this (403): $(reason <"$answer") Set PRICEFLOOR_KEY to a key with the scope check." ;;
    408 | 429 | 5*) no_answer "$status $(reason <"$answer")" ;;
    *) ! grep -q '"code":"unknown-cursor"' "$answer" || return 1
       end 4 "refused: $status $(reason <"$answer")" ;;
  esac
}

[ -r "$sheet" ] || end 4 "$sheet cannot be read"
ask "/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price" \
  --header "Content-Type: text/csv" --header "Accept: application/x-ndjson" --data-binary "@$sheet"
tail -n 1 "$answer" | grep -q '^{"summary"' || no_answer "it was cut short"

name() { # a row of the sheet may have several lines, so an answer is named by its own sku and channel
  local sku channel
  sku=$(texts sku <<<"$line") channel=$(texts channel <<<"$line" | head -n 1)
  echo "${sku:-line $(sed -E 's/.*"line":([0-9]+).*/\1/' <<<"$line")}${channel:+ on $channel}"
}

below=0
while IFS= read -r line; do # one answer a line; prices are compared by the service, never here
  case $line in
    *'"carriesItsShare":false'*)
      below=1
      echo "$(name) does not carry its share$(sed -nE 's/.*"floorPrice":([0-9.]+),"targetPrice":([0-9.]+).*/: floor \1, target \2/p' <<<"$line")" ;;
    *'"status":'*) echo "$(name) was not answered: $(reason <<<"$line")" ;;
  esac
done <"$answer"

if [ -n "$cursor" ]; then
  since=$(cat "$cursor" 2>/dev/null)
  if [ -z "$since" ]; then
    ask "/v1/floor-changes"
  elif ask "/v1/floor-changes?since=$since"; then
    echo "$(grep -o '"oldFloorPrice"' "$answer" | wc -l | tr -d ' ') floors moved since the last run"
  else
    ask "/v1/floor-changes"
    echo "the cursor is not of this store; begun again with $(grep -o '"oldFloorPrice"' "$answer" | wc -l | tr -d ' ') floors"
  fi
  # By rename, so a run that is cut short leaves a whole cursor.
  next=$(texts next <"$answer")
  [ -n "$next" ] || no_answer "it names no cursor"
  echo "$next" >"$cursor.new" && mv "$cursor.new" "$cursor" || end 4 "$cursor cannot be written"
fi
exit "$below"
