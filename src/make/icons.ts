/** Draws the ribbon's icons from their SVG sources, with the Chromium that is installed: `npm run icons`. */
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { placeOf } from './written';

/** 16, 32 and 80 for the ribbon's button, 32 and 64 for the list of add-ins. */
const SOURCES = { 16: 'panel-16', 32: 'panel-32', 64: 'panel', 80: 'panel' } as const;

const browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium' });
const page = await browser.newPage();
for (const [size, source] of Object.entries(SOURCES)) {
  const svg = readFileSync(placeOf(`src/excel/icons/${source}.svg`), 'utf8');
  const side = Number(size);
  await page.setViewportSize({ width: side, height: side });
  await page.setContent(
    `<!doctype html><style>*{margin:0}html{background:transparent}svg{display:block;width:${side}px;height:${side}px}</style>${svg}`,
  );
  const png = await page.screenshot({ omitBackground: true });
  writeFileSync(placeOf(`src/excel/icons/icon-${side}.png`), png);
}
await browser.close();
