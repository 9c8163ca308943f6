import type { Page } from 'playwright-core'

/**
 * What is wrong with the layout as the window shows it: the page scrolls sideways, something cuts off the text that stands in
 * it, two texts lie on each other, or a control cannot be brought into sight. A list that scrolls alone is not meant.
 */
export async function layoutFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const named = (element: Element) =>
      `${element.localName}.${element.className} "${(element.textContent ?? '').trim().slice(0, 60)}"`
    const scrollsAlone = '.long-table, .matrix-scroll, .problems, :has(> .data-table)'
    /** Drawn by other rules, or only read out. */
    const notText = '.visually-hidden, svg, textarea, input, select, option, .plot, .skip-link'
    const dialogs = [...document.querySelectorAll('dialog[open]')]
    const top = dialogs.at(-1) ?? document.body

    const sideways = [
      document.documentElement,
      ...document.querySelectorAll('#main, .frame-head, dialog[open], main *'),
    ]
      .filter((place) => place.scrollWidth > place.clientWidth + 1 && place.closest(scrollsAlone) === null)
      .filter(
        (place) => place === document.documentElement || ['auto', 'scroll'].includes(getComputedStyle(place).overflowX),
      )
      .map((place) => `scrolls sideways: ${named(place)} ${place.scrollWidth} in ${place.clientWidth}`)

    const cut = [...document.querySelectorAll('body *')]
      .filter((element) => element.closest(notText) === null)
      .filter((element) => {
        const { overflowX, overflowY, webkitLineClamp } = getComputedStyle(element)
        // Shortened on purpose, and whole once it is chosen
        if (webkitLineClamp !== 'none') return false
        return (
          (['hidden', 'clip'].includes(overflowX) && element.scrollWidth > element.clientWidth + 1) ||
          (['hidden', 'clip'].includes(overflowY) && element.scrollHeight > element.clientHeight + 2)
        )
      })
      .map((element) => `cut off: ${named(element)}`)

    type Place = { text: string; parent: Element; box: { left: number; right: number; top: number; bottom: number } }
    const places: Place[] = []
    const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement
      if (parent === null || node.textContent?.trim() === '' || parent.closest(notText) !== null) continue
      if (!parent.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue
      const range = document.createRange()
      range.selectNodeContents(node)
      for (const rect of range.getClientRects()) {
        // The box of a line is higher than its letters, by much where they are large
        const below = /[gjpqy,;()[\]]/.test(node.textContent ?? '') ? 0.03 : 0.2
        const box = {
          left: rect.left,
          right: rect.right,
          top: rect.top + 0.15 * rect.height,
          bottom: rect.bottom - below * rect.height,
        }
        // Only what the places around it let through, and nothing that stands still while others pass under it
        let sticky = false
        for (let around: Element | null = parent; around !== null && around !== top; around = around.parentElement) {
          const style = getComputedStyle(around)
          if (['sticky', 'fixed'].includes(style.position) || around.matches('.frame-head')) sticky = true
          // The page itself is scrolled: what lies below the window is looked at too
          if (around.id === 'main' || (style.overflowX === 'visible' && style.overflowY === 'visible')) continue
          const edge = around.getBoundingClientRect()
          box.left = Math.max(box.left, edge.left)
          box.right = Math.min(box.right, edge.right)
          box.top = Math.max(box.top, edge.top)
          box.bottom = Math.min(box.bottom, edge.bottom)
        }
        if (!sticky && box.right - box.left > 1 && box.bottom - box.top > 1)
          places.push({ text: node.textContent!.trim().slice(0, 40), parent, box })
      }
    }
    places.sort((one, other) => one.box.top - other.box.top)
    const overlapping: string[] = []
    for (const [i, { text, parent, box }] of places.entries())
      for (let k = i + 1; k < places.length && places[k]!.box.top < box.bottom; k++) {
        const { text: otherText, parent: otherParent, box: other } = places[k]!
        if (otherParent === parent) continue
        const wide = Math.min(box.right, other.right) - Math.max(box.left, other.left)
        const high = Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top)
        const least = Math.min(box.bottom - box.top, other.bottom - other.top)
        if (wide > 2 && high > 0.2 * least) overlapping.push(`on each other: "${text}" and "${otherText}"`)
      }

    const unreachable = [...top.querySelectorAll('button, a[href], input, select, textarea, [role=slider]')]
      .filter((control) => control.closest('.visually-hidden, .skip-link, .long-table, .plot') === null)
      .filter((control) => control.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
      .filter((control) => {
        const shown = control.matches('.choice input, .switch input') ? control.parentElement! : control
        shown.scrollIntoView({ block: 'center', inline: 'nearest' })
        const { left, right, top: upper, bottom } = shown.getBoundingClientRect()
        if (left < -1 || right > innerWidth + 1 || upper < -1 || bottom > innerHeight + 1) return true
        const hit = document.elementFromPoint((left + right) / 2, (upper + bottom) / 2)
        return hit === null || !(shown.contains(hit) || hit.contains(shown))
      })
      .map((control) => `out of reach: ${named(control)}`)
    return [...sideways, ...cut, ...overlapping, ...unreachable]
  })
}
