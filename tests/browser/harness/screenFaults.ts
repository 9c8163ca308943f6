import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

type Finding = { id: string; impact: string | null; nodes: { html: string; failureSummary?: string }[] }

/** The accessibility findings that a person would meet as a barrier; `rules`: only those, and all of them without. */
export async function barriers(page: Page, rules: string[] | null = null): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource)
  const findings = await page.evaluate(async (only) => {
    const { axe } = globalThis as unknown as {
      axe: { run(where: Document, options: object): Promise<{ violations: Finding[] }> }
    }
    const rulesOf = only === null ? {} : { runOnly: only }
    // What has passed need not be described.
    return (await axe.run(document, { ...rulesOf, resultTypes: ['violations'] })).violations
  }, rules)
  return findings
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary}`).join(' | ')}`,
    )
}

/** What asks for another typeface than those that the page brings, and would be as wide as the machine's happens to be. */
export async function foreignType(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const own = new Set([...document.fonts].map(({ family }) => family.replaceAll('"', '')))
    const ownText = (element: Element) => [...element.childNodes].some(({ nodeType }) => nodeType === Node.TEXT_NODE)
    return [...document.querySelectorAll('body *')]
      .filter((element) => ownText(element) || element.matches('input, select, textarea'))
      .filter((element) => !own.has(getComputedStyle(element).fontFamily.split(',')[0]!.replaceAll('"', '')))
      .map(({ outerHTML }) => outerHTML.slice(0, 120))
  })
}

/** Days written as computers write them; a hint may say how one is typed, and a sheet is shown as it came. */
export async function bareDays(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const asItCame = '.import-sheet, .field-hint, .licence-texts, code, textarea'
    return [...document.querySelectorAll('main *, dialog[open] *')]
      .filter((element) => element.closest(asItCame) === null)
      .flatMap(({ childNodes }) => [...childNodes])
      .filter(
        ({ nodeType, textContent }) => nodeType === Node.TEXT_NODE && /\b\d{4}-\d\d-\d\d\b/.test(textContent ?? ''),
      )
      .map(({ textContent }) => textContent ?? '')
  })
}

/** The common sizes. */
export const wholeSizes = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
]
/** A narrow window, and one of 1280 x 800 enlarged to twice its size. */
export const narrowSizes = [
  { width: 720, height: 800 },
  { width: 640, height: 400 },
]
