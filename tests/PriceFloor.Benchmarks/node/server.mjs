// Price checks as a careful engineer would write them by hand for one shop: Fastify with JSON schemas for body and answer, SQLite through
// a prepared statement, keys kept as hashes. It answers what ours answers to a key that may check.
//   PORT        where it listens, on loopback
//   STORE       the SQLite file, made anew
//   PRICE_LIST  a file with what GET /v1/price-list answered: the rows of the store
//   KEY         the one key that may check
import { hash, timingSafeEqual } from "node:crypto";
import { readFileSync } from "node:fs";
import Database from "better-sqlite3";
import Fastify from "fastify";

const { PORT, STORE, PRICE_LIST, KEY } = process.env;

const db = new Database(STORE);
db.pragma("journal_mode = WAL");
db.exec(`
  CREATE TABLE keys (name TEXT NOT NULL, hash BLOB NOT NULL);
  CREATE TABLE prices (
    sku TEXT NOT NULL, channel TEXT NOT NULL, floorCents INTEGER NOT NULL, targetCents INTEGER NOT NULL, currency TEXT NOT NULL,
    profileBasis TEXT NOT NULL, designBasis TEXT NOT NULL, channelBasis TEXT NOT NULL, PRIMARY KEY (sku, channel)) WITHOUT ROWID;`);
const sha256 = (text) => hash("sha256", text, "buffer");
db.prepare("INSERT INTO keys VALUES (?, ?)").run("shop", sha256(KEY));

const list = JSON.parse(readFileSync(PRICE_LIST, "utf8"));
const basisOf = new Map(list.basis.channels.map((basis) => [basis.slice(0, basis.lastIndexOf("@")), basis]));
const insert = db.prepare("INSERT INTO prices VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
db.transaction(() => {
  for (const item of list.items)
    insert.run(item.sku, item.channel, Math.round(item.floorPrice * 100), Math.round(item.targetPrice * 100), item.currency, list.basis.profiles[0], item.basis, basisOf.get(item.channel));
})();

const keys = db.prepare("SELECT name, hash FROM keys").all();
const find = db.prepare("SELECT floorCents, targetCents, currency, profileBasis, designBasis, channelBasis FROM prices WHERE sku = ? AND channel = ?");

const asked = {
  type: "object",
  required: ["sku", "channel", "price"],
  additionalProperties: false,
  properties: {
    sku: { type: "string", maxLength: 100 },
    channel: { type: "string", maxLength: 64 },
    price: { type: "number", exclusiveMinimum: 0, maximum: 1e9 },
  },
};
const text = { type: "string" }, money = { type: "number" };
const answered = {
  type: "object",
  properties: {
    verdict: text, carriesItsShare: { type: "boolean" }, floorPrice: money, targetPrice: money, price: money, currency: text,
    basis: { type: "object", properties: { profile: text, design: text, channel: text } },
    warnings: { type: "array", items: text },
  },
};

const app = Fastify({ logger: false });

const keyIsKnown = (request, reply, done) => {
  const header = request.headers.authorization;
  const given = header?.startsWith("Bearer ") ? sha256(header.slice(7)) : undefined;
  if (given && keys.some((key) => timingSafeEqual(key.hash, given))) return done();
  reply.code(401).send({ title: "The key is not known here." });
};

app.get("/health/ready", async () => ({ status: "ready" }));

app.post("/v1/price-checks", { onRequest: keyIsKnown, schema: { body: asked, response: { 200: answered } } }, (request, reply) => {
  const { sku, channel, price } = request.body;
  const row = find.get(sku, channel);
  if (!row) return reply.code(422).send({ title: "There is no such design or channel." });
  const cents = Math.round(price * 100);
  if (Math.abs(price * 100 - cents) > 1e-6) return reply.code(422).send({ title: "The price has more decimals than its currency." });
  reply.send({
    verdict: cents < row.floorCents ? "below-floor" : cents < row.targetCents ? "below-target" : "meets-target",
    carriesItsShare: cents >= row.floorCents,
    floorPrice: row.floorCents / 100,
    targetPrice: row.targetCents / 100,
    price,
    currency: row.currency,
    basis: { profile: row.profileBasis, design: row.designBasis, channel: row.channelBasis },
    warnings: [],
  });
});

await app.listen({ host: "127.0.0.1", port: Number(PORT) });
