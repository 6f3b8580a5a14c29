// Checks a sheet of listings and says which do not carry their share, then which floors moved since the last run.
//   PRICEFLOOR_URL=http://127.0.0.1:5080 PRICEFLOOR_KEY=pf_... node check-shop.mjs listings.csv [cursor file]
// Exit code: 0 none is below its floor, 1 some are, 2 no answer (hold nothing up, ask again later), 3 the key, 4 refused otherwise.
import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";

const url = process.env.PRICEFLOOR_URL ?? "http://127.0.0.1:5080";
const [sheet = "listings.csv", cursor] = process.argv.slice(2);

class End extends Error {
  constructor(code, why) { super(why); this.code = code; }
}
const noAnswer = why => new End(2, `no answer; nothing is held up: ${why}`);
const reason = problem => (problem.errors ?? [problem]).map(error => error.detail ?? "").join(" ");

async function ask(path, body) {
  const headers = { Authorization: `Bearer ${process.env.PRICEFLOOR_KEY ?? ""}` };
  if (body) Object.assign(headers, { "Content-Type": "text/csv", Accept: "application/x-ndjson" });
  for (let attempt = 0; ; attempt++) {
    let answer, text;
    try {
      answer = await fetch(url + path, { method: body ? "POST" : "GET", headers, body, signal: AbortSignal.timeout(30_000) });
      text = await answer.text();
    } catch (trouble) {
      throw noAnswer(trouble.cause?.message ?? trouble.message);
    }
    if (answer.ok) return text;
    if (attempt === 2 || (answer.status !== 429 && answer.status !== 503)) throw refused(answer.status, text);
    await new Promise(done => setTimeout(done, 1000 * Math.min(10, Number(answer.headers.get("Retry-After") ?? 1))));
  }
}

function refused(status, text) {
  let problem = {};
  try { problem = JSON.parse(text); } catch { /* not of the service: a proxy's page */ }
  const why = reason(problem);
  if (status === 401 || status === 403) {
    const what = status === 401 ? "no key that is known" : "the key may not do this";
    return new End(3, `${what} (${status}): ${why} Set PRICEFLOOR_KEY to a key with the scope check.`);
  }
  if (status === 408 || status === 429 || status >= 500) return noAnswer(`${status} ${why}`);
  return Object.assign(new End(4, `refused: ${status} ${why}`), { unknownCursor: problem.errors?.[0]?.code === "unknown-cursor" });
}

async function check() {
  const text = await ask("/v1/price-checks/batch?skuColumn=Item&channelColumn=Shop&priceColumn=List%20price", readFileSync(sheet));
  const lines = text.trim().split("\n");
  if (!lines.pop().startsWith('{"summary"')) throw noAnswer("it was cut short");
  let below = false;
  for (const line of lines) {
    const answer = JSON.parse(line);
    // A row of the sheet may have several lines, so an answer is named by its own sku and channel.
    const name = (answer.sku || `line ${answer.errors[0].line}`) + (answer.channel === undefined ? "" : ` on ${answer.channel}`);
    if (answer.verdict === undefined) console.log(`${name} was not answered: ${reason(answer)}`);
    else if (!answer.carriesItsShare) {
      below = true;
      // JSON numbers become floats in JavaScript: show prices as the text they came as, and let the service compare them.
      const price = key => new RegExp(`"${key}":([0-9.]+)`).exec(line)[1];
      const prices = "floorPrice" in answer ? `: floor ${price("floorPrice")}, target ${price("targetPrice")}` : "";
      console.log(`${name} does not carry its share${prices}`);
    }
  }
  return below;
}

async function follow() {
  const since = existsSync(cursor) ? readFileSync(cursor, "utf8").trim() : "";
  let changes;
  try {
    changes = JSON.parse(await ask("/v1/floor-changes" + (since ? `?since=${since}` : "")));
    if (since) console.log(`${changes.items.length} floors moved since the last run`);
  } catch (trouble) {
    if (!trouble.unknownCursor) throw trouble;
    changes = JSON.parse(await ask("/v1/floor-changes"));
    console.log(`the cursor is not of this store; begun again with ${changes.items.length} floors`);
  }
  // By rename, so a run that is cut short leaves a whole cursor.
  writeFileSync(`${cursor}.new`, changes.next);
  renameSync(`${cursor}.new`, cursor);
}

try {
  const below = await check();
  if (cursor) await follow();
  process.exitCode = below ? 1 : 0;
} catch (trouble) {
  console.error(trouble.message);
  process.exitCode = trouble instanceof End ? trouble.code : 4;
}
