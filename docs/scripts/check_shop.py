"""Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.

    PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... python3 check_shop.py listings.csv [cursor file]

Exit code: 0 none is below its floor, 1 some are, 2 no answer (hold nothing up, ask again later), 3 the key, 4 refused otherwise.
"""
import http.client
import json
import os
import sys
import time
import urllib.error
import urllib.request
from decimal import Decimal

URL = os.environ.get("PRICEFLOOR_URL", "http://127.0.0.1:5080")


class UnknownCursor(Exception):
    """The store is another than the one that gave the cursor."""


def ask(path, body=None):
    headers = {"Authorization": "Bearer " + os.environ.get("PRICEFLOOR_KEY", "")}
    if body is not None:
        headers.update({"Content-Type": "text/csv", "Accept": "application/x-ndjson"})
    for attempt in range(3):
        try:
            with urllib.request.urlopen(urllib.request.Request(URL + path, data=body, headers=headers), timeout=30) as answer:
                return answer.read().decode()
        except urllib.error.HTTPError as problem:
            if problem.code in (429, 503) and attempt < 2:
                time.sleep(min(10, int(problem.headers.get("Retry-After", "1"))))
                continue
            refused(problem.code, problem.read())
        except (OSError, http.client.HTTPException) as trouble:
            end(2, f"no answer; nothing is held up: {trouble}")


def refused(status, text):
    try:
        problem = json.loads(text)
    except ValueError:  # not of the service: a proxy's page
        problem = {}
    why = reason(problem)
    if status in (401, 403):
        what = "no key that is known" if status == 401 else "the key may not do this"
        end(3, f"{what} ({status}): {why} Set PRICEFLOOR_KEY to a key with the scope check.")
    if status in (408, 429) or status >= 500:
        end(2, f"no answer; nothing is held up: {status} {why}")
    if any(error["code"] == "unknown-cursor" for error in problem.get("errors", [])):
        raise UnknownCursor
    end(4, f"refused: {status} {why}")


def reason(problem):
    return " ".join(error.get("detail", "") for error in problem.get("errors") or [problem])


def end(code, why):
    print(why, file=sys.stderr)
    raise SystemExit(code)


def check(sheet):
    """True if a row is below its floor."""
    with open(sheet, "rb") as file:
        lines = ask("/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", file.read()).splitlines()
    if not lines or not lines.pop().startswith('{"summary"'):
        end(2, "no answer; nothing is held up: it was cut short")
    below = False
    for line in lines:
        answer = json.loads(line, parse_float=Decimal)  # money stays exact: decimals, never floats
        # A row of the sheet may have several lines, so an answer is named by its own sku and channel.
        name = answer.get("sku") or f"line {answer['errors'][0]['line']}"
        if "channel" in answer:
            name += f" on {answer['channel']}"
        if "verdict" not in answer:
            print(f"{name} was not answered: {reason(answer)}")
        elif not answer["carriesItsShare"]:
            below = True
            prices = f": floor {answer['floorPrice']}, target {answer['targetPrice']}" if "floorPrice" in answer else ""
            print(f"{name} does not carry its share{prices}")
    return below


def follow(cursor):
    since = ""
    if os.path.exists(cursor):
        with open(cursor, encoding="utf-8") as file:
            since = file.read().strip()
    try:
        changes = json.loads(ask("/v1/floor-changes" + (f"?since={since}" if since else "")))
        if since:
            print(f"{len(changes['items'])} floors moved since the last run")
    except UnknownCursor:
        changes = json.loads(ask("/v1/floor-changes"))
        print(f"the cursor is not of this store; begun again with {len(changes['items'])} floors")
    # By rename, so a run that is cut short leaves a whole cursor.
    with open(cursor + ".new", "w", encoding="utf-8") as file:
        file.write(changes["next"])
    os.replace(cursor + ".new", cursor)


def main(sheet, cursor=None):
    try:
        below = check(sheet)
        if cursor:
            follow(cursor)
    except (OSError, ValueError, KeyError) as trouble:  # a file that cannot be read or written, an answer that is not of the service
        end(4, f"{type(trouble).__name__}: {trouble}")
    return 1 if below else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:] or ["listings.csv"]))
