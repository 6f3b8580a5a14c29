// In headless Chromium: no words of a picture leave it or run into others, at the width of a telephone and of a desk, in light and in dark, which must
// differ; a list to print takes one to three pages of A4 and of Letter, a year one, and is no wider than a telephone; so is the page of the
// contract, with every part of it open.
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { resolve, basename } from 'node:path';
import puppeteer from 'puppeteer-core';

const [from, to, contract] = process.argv.slice(2);
let executablePath = process.env.CHROMIUM, args = ['--no-sandbox'];
if (!executablePath) {
  const { default: bundled } = await import('@sparticuz/chromium');
  [executablePath, args] = [await bundled.executablePath(), bundled.args];
}

const browser = await puppeteer.launch({ executablePath, args, headless: 'shell' });
const wrong = [];

async function look(picture) {
  const svg = readFileSync(picture, 'utf8'), name = basename(picture, '.svg'), shots = [];
  for (const [width, scheme] of [[360, 'light'], [480, 'dark'], [480, 'light']]) {
    const page = await browser.newPage();
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
    await page.setViewport({ width, height: 300 });
    await page.setContent(`<!DOCTYPE html><body style="margin:0">${svg}`);
    wrong.push(...(await page.evaluate(() => {
      const found = [], svg = document.querySelector('svg'), view = svg.viewBox.baseVal;
      const texts = [...svg.querySelectorAll('text')].map(text => [text.textContent, text.getBBox()]);
      if (texts.length < 5) found.push('hardly a word in it');
      for (const [words, box] of texts)
        if (box.x < 0 || box.y < 0 || box.x + box.width > view.width || box.y + box.height > view.height) found.push(`"${words}" leaves the picture`);
      texts.forEach(([one, a], i) => texts.slice(i + 1).forEach(([other, b]) => {
        const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x), down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
        if (across > 1 && down > 4) found.push(`"${one}" runs into "${other}"`);
      }));
      return found;
    })).map(fault => `${picture}: ${fault}`));
    await page.setContent(`<!DOCTYPE html><body style="margin:0"><img style="display:block;width:100%" src="data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}">`);
    await page.waitForFunction(() => document.images[0].complete && document.images[0].naturalWidth === 480);
    shots.push(Buffer.from(await page.screenshot({ path: `${to}/${name}-${width}-${scheme}.png`, fullPage: true })));
    await page.close();
  }
  if (shots[1].equals(shots[2])) wrong.push(`${picture}: light and dark look the same`);
}

async function print(sheet) {
  const name = basename(sheet, '.html');
  const page = await browser.newPage();
  await page.setViewport({ width: 380, height: 700 });
  await page.goto(pathToFileURL(resolve(sheet)).href);
  await page.screenshot({ path: `${to}/${name}-380.png`, fullPage: true });
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  if (width > 380) wrong.push(`${sheet}: ${width} wide on a telephone of 380`);
  await page.setViewport({ width: 1000, height: 1200 });
  await page.screenshot({ path: `${to}/${name}-1000.png`, fullPage: true });
  for (const format of ['A4', 'Letter']) {
    const pdf = Buffer.from(await page.pdf({ format }));
    writeFileSync(`${to}/${name}-${format}.pdf`, pdf);
    const pages = Number(/\/Count (\d+)/.exec(pdf.toString('latin1'))?.[1] ?? 0);
    const most = name === 'year' ? 1 : 3;
    if (pages < 1 || pages > most) wrong.push(`${sheet}: ${pages} pages of ${format}`);
    console.log(`${name} prints on ${pages} pages of ${format}`);
  }
}

async function read(text) {
  const shots = [];
  for (const [width, scheme] of [[360, 'light'], [360, 'dark'], [1000, 'light']]) {
    const page = await browser.newPage();
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
    await page.setViewport({ width, height: 800 });
    await page.goto(pathToFileURL(resolve(text)).href);
    shots.push(Buffer.from(await page.screenshot({ path: `${to}/contract-${width}-${scheme}.png` })));
    const [wide, calls] = await page.evaluate(() => {
      document.querySelectorAll('details').forEach(part => { part.open = true; });
      return [document.documentElement.scrollWidth, document.querySelectorAll('section details').length];
    });
    if (wide > width) wrong.push(`${text}: ${wide} wide in ${width}`);
    if (calls < 50) wrong.push(`${text}: hardly a call on it`);
    await page.close();
  }
  if (shots[0].equals(shots[1])) wrong.push(`${text}: light and dark look the same`);
}

const files = readdirSync(from).map(name => `${from}/${name}`);
for (const file of files) await (file.endsWith('.svg') ? look(file) : print(file));
if (existsSync(contract)) await read(contract);
else console.log('the page of the contract is not looked at: the tests write it');
await browser.close();
wrong.forEach(fault => console.log(fault));
console.log(`${files.length} looked at, ${wrong.length} faults`);
process.exit(wrong.length === 0 && files.length > 0 ? 0 : 1);
