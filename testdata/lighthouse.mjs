// Has Lighthouse audit pages as a phone loads them, all in one Chromium, and prints
// what it says of each as a line of JSON:
//
//     node testdata/lighthouse.mjs CHROMIUM CATEGORIES TIMES ADDRESS...
//
// CATEGORIES are Lighthouse's own ids, parted by commas. Each address is audited
// TIMES times. A line has the address, the score of each category (0 to 100, the
// median), times in ms and bytes where they were measured (medians too), and the
// audits of the last time that count and are below the best.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import lighthouse from 'lighthouse'
import puppeteer from 'puppeteer-core'

const [executablePath, categories, times, ...addresses] = process.argv.slice(2)
const timed = {
  fcp: 'first-contentful-paint', lcp: 'largest-contentful-paint', tbt: 'total-blocking-time', cls: 'cumulative-layout-shift',
  bytes: 'total-byte-weight',
}

// Only performance wants the waits for a page that has come to rest, and the picture of it.
const settings = {
  onlyCategories: categories.split(','), output: 'json', logLevel: 'error', disableFullPageScreenshot: true,
  ...(categories.includes('performance') ? {} : { pauseAfterFcpMs: 0, pauseAfterLoadMs: 0, networkQuietThresholdMs: 500, cpuQuietThresholdMs: 0 }),
}

/** median is the middle one of numbers, of two the lower. */
const median = (numbers) => numbers.toSorted((a, b) => a - b)[(numbers.length - 1) >> 1]

/** below lists the audits that count in a category and could be better, with what they found. */
function below({ audits, categories: judged }) {
  const counting = Object.values(judged).flatMap((c) => c.auditRefs).filter((ref) => ref.weight > 0)
  return counting.map(({ id }) => audits[id]).filter(({ score }) => score !== null && score < 1).map(({ id, title, displayValue, details }) => {
    const where = (details?.items ?? []).slice(0, 4).map((i) => i.node?.snippet ?? i.url ?? i.description ?? i.source ?? '').filter((text) => text)
    return [`${id}: ${title}`, displayValue, ...where].filter((text) => text).join(' | ')
  })
}

/** audit has an address audited once; what cannot be audited is an error. */
async function audit(page, address) {
  // Each page would take the whole handbook for when there is no network.
  if (!categories.includes('performance')) await page.evaluateOnNewDocument('delete Navigator.prototype.serviceWorker')
  const found = await lighthouse(address, settings, undefined, page)
  const { lhr } = found ?? {}
  if (!lhr || lhr.runtimeError) throw new Error(`${address}: ${lhr?.runtimeError?.message ?? 'Lighthouse says nothing'}`)
  for (const { id, score } of Object.values(lhr.categories)) {
    if (score === null) throw new Error(`${address}: no score for ${id}`)
  }
  return lhr
}

const profile = mkdtempSync(join(tmpdir(), 'lighthouse-'))
const root = process.getuid() === 0 ? ['--no-sandbox'] : []
const browser = await puppeteer.launch({ executablePath, userDataDir: profile, args: [...root, '--disable-gpu', '--disable-quic', '--disable-component-update'] })
try {
  for (const address of addresses) {
    const runs = []
    for (let n = 0; n < Number(times); n++) {
      const page = await browser.newPage()
      runs.push(await audit(page, address))
      await page.close()
    }
    const scores = Object.fromEntries(Object.keys(runs[0].categories).map((id) => [id, median(runs.map((r) => Math.round(100 * r.categories[id].score)))]))
    const measured = Object.entries(timed).map(([name, id]) => [name, median(runs.map((r) => r.audits[id]?.numericValue ?? NaN))])
    console.log(JSON.stringify({
      address, scores, ...Object.fromEntries(measured.filter(([, value]) => !Number.isNaN(value))), below: below(runs.at(-1)),
    }))
  }
} finally {
  await browser.close()
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
}
