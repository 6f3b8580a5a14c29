// Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
//   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... node check-shop.mjs listings.csv [cursor file]
// Exit code: 0 all carry their share, 1 some do not, 2 no answer (then nothing must be held up: ask again later).
import { existsSync, readFileSync, writeFileSync } from "node:fs";

const url = process.env.PRICEFLOOR_URL ?? "http://127.0.0.1:5080";
const [sheet = "listings.csv", cursor] = process.argv.slice(2);

async function ask(path, body) {
  const headers = { Authorization: `Bearer ${process.env.PRICEFLOOR_KEY}` };
  if (body) Object.assign(headers, { "Content-Type": "text/csv", Accept: "application/x-ndjson" });
  for (let attempt = 0; ; attempt++) {
    const answer = await fetch(url + path, { method: body ? "POST" : "GET", headers, body, signal: AbortSignal.timeout(30_000) });
    if (answer.ok) return answer.text();
    if (attempt === 2 || (answer.status !== 429 && answer.status !== 503)) throw new Error(`${answer.status}: ${(await answer.json()).detail}`);
    await new Promise(done => setTimeout(done, 1000 * Math.min(10, Number(answer.headers.get("Retry-After") ?? 1))));
  }
}

try {
  const text = readFileSync(sheet);
  const items = text.toString().replace(/^\uFEFF/, "").trim().split(/\r?\n/).slice(1).map(row => row.split(",")[0]); // the key column needs no quotes here
  const lines = (await ask("/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", text)).trim().split("\n").slice(0, -1);
  let below = false;
  lines.forEach((line, i) => {
    const answer = JSON.parse(line);
    if (answer.verdict === undefined) console.log(`${items[i]} was not answered: ${answer.detail}`);
    else if (!answer.carriesItsShare) {
      below = true;
      // JSON numbers become floats in JavaScript: show prices as the text they came as, and let the service compare them.
      const price = name => new RegExp(`"${name}":([0-9.]+)`).exec(line)[1];
      console.log(`${items[i]} does not carry its share: floor ${price("floorPrice")}, target ${price("targetPrice")}`);
    }
  });

  if (cursor) {
    const since = existsSync(cursor) ? readFileSync(cursor, "utf8").trim() : "";
    const changes = JSON.parse(await ask("/v1/floor-changes" + (since ? `?since=${since}` : "")));
    if (since) console.log(`${changes.items.length} floors moved since the last run`);
    writeFileSync(cursor, changes.next);
  }

  process.exitCode = below ? 1 : 0;
} catch (trouble) {
  console.error(`no answer; nothing is held up: ${trouble.message}`);
  process.exitCode = 2;
}
