// The main job through a client made from the contract: store a year, a design and a shop, check a price, read a floor, plan the year.
// contract.ts is made by openapi-typescript beside this file (.ci/clients); nothing made is committed.
import createClient from "openapi-fetch";
import type { components, paths } from "./contract.js";

const baseUrl = process.env.PRICEFLOOR_URL ?? "http://127.0.0.1:5080";
const client = createClient<paths>({ baseUrl, headers: { Authorization: `Bearer ${process.env.PRICEFLOOR_KEY}` } });

let passed = 0;
function check(what: string, actual: unknown, expected: unknown): void {
  if (JSON.stringify(actual) !== JSON.stringify(expected)) throw new Error(`${what}: ${JSON.stringify(actual)} instead of ${JSON.stringify(expected)}`);
  passed++;
}

// 24,000 for the business and 3,000 a month for the household: 60,000 over 2,000 bench hours is 30.00 an hour.
const year: components["schemas"]["CostProfile"] = {
  currency: "USD",
  yearStart: "2027-01-01",
  calendar: { weeksPerYear: 50, daysPerWeek: 5, hoursPerDay: 8 },
  expenses: [{ name: "Everything the business pays", amount: 24000, per: "year", costKind: "interest-and-loans" }],
  household: [{ name: "Everything at home", amount: 3000, per: "month" }],
};
const profile = await client.PUT("/v1/profiles/{key}", { params: { path: { key: "ts-year" } }, body: year });
check("the profile is created", profile.response.status, 201);
check("a word with hyphens comes back as it was sent", profile.data?.expenses?.[0]?.costKind, "interest-and-loans");
check("the ETag is the revision", profile.response.headers.get("ETag"), '"1"');

const design = await client.PUT("/v1/designs/{sku}", {
  params: { path: { sku: "TS-1" } },
  body: { name: "River drop pendant", profile: "ts-year", making: { piecesPerDay: 4 } },
});
check("the design is created, with its defaults", [design.response.status, design.data?.making.goodShare], [201, 1]);

const channel = await client.PUT("/v1/channels/{key}", {
  params: { path: { key: "ts-shop" } },
  body: { sells: "retail", currency: "USD", fees: [{ name: "card", rate: 0.024, fixed: 0.25, of: "price-and-shipping" }] },
});
check("the channel is created, with its words", [channel.response.status, channel.data?.fees?.[0]?.of], [201, "price-and-shipping"]);

// Four a day are two hours each: 60.00. The shop takes 2.4 % and 0.25: (60 + 0.25) / 0.976 = 61.7315..., so 61.74.
const asked = await client.POST("/v1/price-checks", { body: { sku: "TS-1", channel: "ts-shop", price: 58 } });
const verdict: "below-floor" | "below-target" | "meets-target" | undefined = asked.data?.verdict;
check("58.00 is below the floor", [verdict, asked.data?.floorPrice, asked.data?.carriesItsShare], ["below-floor", 61.74, false]);

const floor = await client.GET("/v1/designs/{sku}/floor-price", { params: { path: { sku: "TS-1" }, query: { workings: true } } });
check("the floor", [floor.data?.floor, floor.data?.retail], [60, 120]);
check("its workings", (floor.data?.workings?.length ?? 0) > 5, true);

const plan = await client.POST("/v1/year-plans", {
  body: { profile: "ts-year", lines: [{ sku: "TS-1", channel: "ts-shop", price: 120, units: 600 }] },
});
// 120 less 2.4 % and 0.25 leaves 116.87; 600 of them leave 70,122 for a pool of 60,000.
check("600 pieces close the year", [plan.data?.closes, plan.data?.surplusBeforeTax], [true, 10122]);

// Numbers here are binary: compare money, do not add it up, or read the text, which is exact.
const text = await client.POST("/v1/price-checks", { body: { sku: "TS-1", channel: "ts-shop", price: 120 }, parseAs: "text" });
check("the raw text has every cent", String(text.data).includes('"price":120.00,'), true);
check("sums of numbers are not money", 0.1 + 0.2 === 0.3, false);

const refused = await client.POST("/v1/price-checks", { body: { sku: "TS-1", channel: "nowhere", price: 58 } });
check("a problem is typed", [refused.error?.type, refused.error?.status, refused.error?.errors?.[0]?.code], ["/problems/unknown-reference", 422, "unknown-channel"]);

// A batch answers in order: each item is an answer or a problem, and says what it is about.
const batch = await client.POST("/v1/price-checks/batch", {
  body: [
    { sku: "TS-1", channel: "ts-shop", price: 58 },
    { sku: "TS-1", channel: "nowhere", price: 58 },
  ],
});
// It may also come as lines or as a sheet, which are text; JSON was sent, so JSON comes back.
const [first, second] = (batch.data as components["schemas"]["PriceCheckBatchAnswer"] | undefined)?.items ?? [];
check("the first of a batch is an answer", first && "verdict" in first && [first.sku, first.channel, first.verdict, first.floorPrice], ["TS-1", "ts-shop", "below-floor", 61.74]);
check("the second is a problem", second && "status" in second && [second.sku, second.channel, second.status, second.errors?.[0]?.code], ["TS-1", "nowhere", 422, "unknown-channel"]);

await client.DELETE("/v1/channels/{key}", { params: { path: { key: "ts-shop" } } });
const history = await client.GET("/v1/channels/{key}/revisions", { params: { path: { key: "ts-shop" } } });
const [made, gone] = history.data?.items ?? [];
check("a revision is the document", made && "sells" in made && [made.revision, made.sells], [1, "retail"]);
check("a deletion says so", gone && "deleted" in gone && [gone.revision, gone.deleted], [2, true]);

// @ts-expect-error A word that is none does not compile.
const wrong: components["schemas"]["CostKind"] = "interest and loans";
check("only words of the contract compile", typeof wrong, "string");

console.log(`typescript: ${passed} checks passed`);
