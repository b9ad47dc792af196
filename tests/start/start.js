// How the hosted page starts on a phone, as Lighthouse sees it: one figure a line, name, tab, number. `bench --start` reads it.

import { launch } from "chrome-launcher";
import lighthouse from "lighthouse";
import { flags, host } from "../browser/support/launch.js";

/** Visits of which the median counts. */
const VISITS = Number(process.argv[2] ?? 5);

const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

/** The figures of one visit; the mobile preset is Lighthouse's own, with its slow network and processor. */
async function visit(address) {
  const chrome = await launch({ chromePath: process.env.CHROMIUM ?? "/usr/bin/chromium", chromeFlags: ["--headless=new", ...flags] });
  try {
    const onlyCategories = ["performance", "accessibility", "best-practices"];
    const { lhr } = await lighthouse(address, { port: chrome.port, logLevel: "error", onlyCategories });
    if (process.env.WASHPATH_TELL) tell(lhr);
    const value = (audit) => lhr.audits[audit].numericValue;
    return {
      "performance": lhr.categories.performance.score,
      "accessibility": lhr.categories.accessibility.score,
      "best practices": lhr.categories["best-practices"].score,
      "layout shift": value("cumulative-layout-shift"),
      "largest paint": value("largest-contentful-paint"),
      "blocked": value("total-blocking-time"),
      "first paint": value("first-contentful-paint"),
      "speed index": value("speed-index"),
    };
  } finally {
    chrome.kill();
  }
}

const site = await host();
try {
  const visits = [];
  for (let i = 0; i < VISITS; i += 1) visits.push(await visit(site.address));
  for (const name of Object.keys(visits[0])) console.log(`${name}\t${median(visits.map((figures) => figures[name]))}`);
} finally {
  await site.stop();
}

/** What a visit's report says falls short, to the error output. */
function tell({ audits }) {
  for (const { id, score, displayValue, details } of Object.values(audits)) {
    if (score === null || score >= 0.95) continue;
    console.error(`${id}: ${score} ${displayValue ?? ""}`);
    for (const item of details?.items?.slice(0, 5) ?? []) console.error(`  ${JSON.stringify(item).slice(0, 300)}`);
  }
}
