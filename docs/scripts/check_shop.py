"""Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.

    PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... python3 check_shop.py listings.csv [cursor file]

Exit code: 0 all carry their share, 1 some do not, 2 no answer (then nothing must be held up: ask again later).
"""
import csv
import json
import os
import sys
import time
import urllib.error
import urllib.request
from decimal import Decimal

URL = os.environ.get("PRICEFLOOR_URL", "http://127.0.0.1:5080")


def ask(path, body=None, content_type=None):
    headers = {"Authorization": "Bearer " + os.environ["PRICEFLOOR_KEY"], "Accept": "application/json"}
    if content_type:
        headers.update({"Content-Type": content_type, "Accept": "application/x-ndjson"})
    for attempt in range(3):
        try:
            with urllib.request.urlopen(urllib.request.Request(URL + path, data=body, headers=headers), timeout=30) as answer:
                return answer.read().decode()
        except urllib.error.HTTPError as problem:
            if problem.code in (429, 503) and attempt < 2:
                time.sleep(min(10, int(problem.headers.get("Retry-After", "1"))))
                continue
            detail = json.load(problem).get("detail", "")
            raise SystemExit(no_answer(f"{problem.code}: {detail}"))
        except OSError as trouble:
            raise SystemExit(no_answer(trouble))


def no_answer(why):
    print(f"no answer; nothing is held up: {why}", file=sys.stderr)
    return 2


def main(sheet, cursor=None):
    with open(sheet, newline="", encoding="utf-8-sig") as file:
        items = [row["Item"] for row in csv.DictReader(file)]
    with open(sheet, "rb") as file:
        text = ask("/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", file.read(), "text/csv")
    # Money stays exact: decimals, never floats.
    answers = [json.loads(line, parse_float=Decimal) for line in text.splitlines()][:-1]
    below = False
    for item, answer in zip(items, answers, strict=True):
        if "verdict" not in answer:
            print(f"{item} was not answered: {answer['detail']}")
        elif not answer["carriesItsShare"]:
            below = True
            print(f"{item} does not carry its share: floor {answer['floorPrice']}, target {answer['targetPrice']}")

    if cursor:
        since = open(cursor).read().strip() if os.path.exists(cursor) else ""
        changes = json.loads(ask("/v1/floor-changes" + (f"?since={since}" if since else "")))
        if since:
            print(f"{len(changes['items'])} floors moved since the last run")
        with open(cursor, "w") as file:
            file.write(changes["next"])
    return 1 if below else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:] or ["listings.csv"]))
