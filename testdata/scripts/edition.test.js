import assert from 'node:assert/strict'
import { createHash } from 'node:crypto'
import { test } from 'node:test'
import { addressOf, cacheOf, digestOf, isFolder, isOf, listed, meant, plan, urlOf, wanted } from './edition'

const line = (address, digest, picture) => (picture ? [address, 10, digest, picture] : [address, 10, digest])

/** edition is one of two units, with a page that is kept once it was asked for. */
function edition(whole, changed = {}) {
  const it = (address, picture) => line(address, changed[address] ?? address.toUpperCase(), picture)
  return {
    name: 'AAAAAAAA', page: 'phone.html', whole,
    core: [it('index.html'), it('assets/a-1.css')],
    units: [{ id: 'slip', lines: [it('slip/index.html'), it('slip/mix.html')] }, { id: 'wash', lines: [it('wash/index.html')] }],
    rest: [it('answers.html'), it('pictures/jar-1.jpg', 1)],
  }
}

const addresses = (lines) => lines.map(([address]) => address)
const nothing = new Map()

test('a handbook that is taken whole takes all but the rest', () => {
  assert.deepEqual(addresses(wanted(edition(true), new Set())), ['index.html', 'assets/a-1.css', 'slip/index.html', 'slip/mix.html', 'wash/index.html'])
})

test('of a large handbook only what every unit needs and the chosen units are taken', () => {
  assert.deepEqual(addresses(wanted(edition(false), new Set())), ['index.html', 'assets/a-1.css'])
  assert.deepEqual(addresses(wanted(edition(false), new Set(['wash', 'gone']))), ['index.html', 'assets/a-1.css', 'wash/index.html'])
})

test('the first time everything is fetched', () => {
  const { copied, fetched } = plan(edition(true), new Set(), nothing)
  assert.deepEqual(addresses(copied), [])
  assert.equal(fetched.length, 5)
})

test('what did not change is copied, under whatever address it was, and only what did is fetched', () => {
  const had = new Map([['index.html', 'OLD'], ['assets/a-1.css', 'ASSETS/A-1.CSS'], ['slip/index.html', 'SLIP/INDEX.HTML'], ['slip/old-name.html', 'SLIP/MIX.HTML'], ['wash/index.html', 'WASH/INDEX.HTML'], ['gone.html', 'GONE']])
  const { copied, fetched } = plan(edition(true), new Set(), had)
  assert.deepEqual(addresses(copied), ['assets/a-1.css', 'slip/index.html', 'slip/mix.html', 'wash/index.html'])
  assert.deepEqual(addresses(fetched), ['index.html'])
})

test('what somebody once asked for stays kept, changed or not, and nothing comes back that is gone', () => {
  const had = new Map([['answers.html', 'ANSWERS.HTML'], ['slip/mix.html', 'OLD'], ['gone.html', 'GONE']])
  const { copied, fetched } = plan(edition(false), new Set(), had)
  assert.deepEqual(addresses(copied), ['answers.html'])
  assert.deepEqual(addresses(fetched), ['index.html', 'assets/a-1.css', 'slip/mix.html'])
})

test('every file is listed once', () => {
  assert.deepEqual([...listed(edition(false)).keys()], ['index.html', 'assets/a-1.css', 'slip/index.html', 'slip/mix.html', 'wash/index.html', 'answers.html', 'pictures/jar-1.jpg'])
  assert.equal(listed(edition(false)).get('pictures/jar-1.jpg')[3], 1)
})

const root = new URL('https://clay.example/a/b/')

test('an address means a file, whatever numbers it carries', () => {
  for (const [address, want] of [
    ['https://clay.example/a/b/', 'index.html'],
    ['https://clay.example/a/b/index.html', 'index.html'],
    ['https://clay.example/a/b/slip/', 'slip/index.html'],
    ['https://clay.example/a/b/slip', 'slip'],
    ['https://clay.example/a/b/calculators/slip-density.html?mass=212.4&mass.unit=g#calculator.0', 'calculators/slip-density.html'],
    ['https://clay.example/a/b/pictures/gl%C3%BChbrand-1.jpg', 'pictures/glühbrand-1.jpg'],
    ['https://clay.example/a/b/%E0%A4%A', undefined],
    ['https://clay.example/a/', undefined],
    ['https://clay.example/a/bc/index.html', undefined],
    ['https://other.example/a/b/index.html', undefined],
    ['http://clay.example/a/b/index.html', undefined],
  ]) assert.equal(addressOf(new URL(address), root), want, address)
})

test('an address leads to its file and back', () => {
  for (const address of ['index.html', 'slip/mix.html', 'pictures/glühbrand 100% #1?.jpg', '.kept']) {
    assert.equal(addressOf(new URL(urlOf(address, root)), root), address)
  }
})

test('a file is found where a server leaves its ending out, and a folder where it leaves out the stroke', () => {
  const lines = listed(edition(true))
  assert.equal(meant('slip/mix', lines)[0], 'slip/mix.html')
  assert.equal(meant('slip/mix.html', lines)[0], 'slip/mix.html')
  assert.equal(meant('slip', lines), undefined)
  assert.equal(isFolder('slip', lines), true)
  assert.equal(isFolder('slip/mix', lines), false)
  assert.equal(isFolder('nowhere', lines), false)
})

test('a digest is the beginning of the SHA-256, as the generator writes it', async () => {
  for (const text of ['', 'slip', 'a'.repeat(1000), '\u00e4>?']) {
    const bytes = new TextEncoder().encode(text)
    const want = createHash('sha256').update(bytes).digest().subarray(0, 12).toString('base64url')
    assert.equal(await digestOf(bytes.buffer), want)
  }
})

test('a cache tells whose it is', () => {
  assert.equal(isOf(root, cacheOf(root, 'AAAAAAAA')), true)
  assert.equal(isOf(root, cacheOf(root, '')), true)
  for (const above of ['https://clay.example/', 'https://clay.example/a/', 'https://clay.example/a/b/c/']) {
    assert.equal(isOf(root, cacheOf(new URL(above), 'AAAAAAAA')), false, above)
  }
  for (const other of ['', 'slipbook', 'slipbook /a/b/', 'other /a/b/ AAAAAAAA', 'slipbook /a/b/ A B']) assert.equal(isOf(root, other), false, other)
})
