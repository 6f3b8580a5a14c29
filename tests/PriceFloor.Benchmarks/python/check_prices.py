"""Checks a sheet of prices against floors and targets, as one would write it for a shop: csv and decimal, nothing else.

python3 check_prices.py PRICE_LIST SHEET ANSWER, where PRICE_LIST is what GET /v1/price-list answers as text/csv. Writes to ANSWER what
POST /v1/price-checks/batch answers, and prints the seconds and the processor's seconds that it took.
"""

import csv
import sys
import time
from decimal import Decimal, InvalidOperation


def floors_and_targets(path):
    with open(path, newline="", encoding="utf-8") as file:
        return {
            (row["sku"], row["channel"]): (Decimal(row["floorPrice"]), Decimal(row["targetPrice"]), row["floorPrice"], row["targetPrice"])
            for row in csv.DictReader(file)
        }


def verdict(price, floor, target):
    if price < floor:
        return "below-floor"
    return "below-target" if price < target else "meets-target"


def check(price_list, sheet, answer):
    known = floors_and_targets(price_list)
    with open(sheet, newline="", encoding="utf-8") as rows, open(answer, "w", newline="", encoding="utf-8") as answers:
        reader, writer = csv.reader(rows), csv.writer(answers, lineterminator="\n")
        header = next(reader)
        sku, channel, price = header.index("sku"), header.index("channel"), header.index("price")
        writer.writerow([*header, "verdict", "floorPrice", "targetPrice", "problem"])
        for row in reader:
            try:
                asked = Decimal(row[price])
                if asked <= 0 or asked.as_tuple().exponent < -2:
                    raise InvalidOperation
                floor, target, floor_text, target_text = known[row[sku], row[channel]]
            except InvalidOperation:
                writer.writerow([*row, "", "", "", "The price is not one."])
            except KeyError:
                writer.writerow([*row, "", "", "", "There is no such design or channel."])
            else:
                writer.writerow([*row, verdict(asked, floor, target), floor_text, target_text, ""])


if __name__ == "__main__":
    started, used = time.perf_counter(), time.process_time()
    check(*sys.argv[1:])
    print(time.perf_counter() - started, time.process_time() - used)
