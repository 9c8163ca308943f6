import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Fragment, jsx, jsxs } from '#renderer/widgets/visible/jsx-runtime.ts'

const hidden = 'C1\u200b\u202e'
const marked = 'C1&lt;U+200B&gt;&lt;U+202E&gt;'

describe('an element of the page', () => {
  it('shows what cannot be seen in its text, alone, among others and in lists', () => {
    expect(renderToStaticMarkup(jsx('p', { children: hidden }))).toBe(`<p>${marked}</p>`)
    const several = jsxs('p', { children: [hidden, jsx('b', { children: 'bold' }), [hidden, [hidden]]] })
    expect(renderToStaticMarkup(several)).toBe(`<p>${marked}<b>bold</b>${marked}${marked}</p>`)
    expect(renderToStaticMarkup(jsx(Fragment, { children: hidden }))).toBe(marked)
  })

  it('shows it in what the element is named by', () => {
    const named = { title: hidden, alt: hidden, 'aria-label': hidden, placeholder: hidden }
    expect(renderToStaticMarkup(jsx('img', named))).toBe(
      `<img title="${marked}" alt="${marked}" aria-label="${marked}" placeholder="${marked}"/>`,
    )
  })

  it('leaves what is typed, and every other attribute, as it is', () => {
    const field = renderToStaticMarkup(jsx('input', { defaultValue: hidden, id: hidden }))
    expect(field).toBe(renderToStaticMarkup(createElement('input', { defaultValue: hidden, id: hidden })))
    expect(field).toContain(hidden)
  })

  it('hands a component its texts unchanged, which the elements that it makes then show', () => {
    const given: string[] = []
    const Name = ({ children }: { children: string }) => {
      given.push(children)
      return jsx('b', { children })
    }
    expect(renderToStaticMarkup(jsx(Name, { children: hidden }))).toBe(`<b>${marked}</b>`)
    expect(given).toEqual([hidden])
  })

  it('keeps line ends, keys and the very properties where there is nothing to show', () => {
    const props = { children: ['two\nlines', 3, null], title: 'plain' }
    const made = jsxs('p', props, 'key')
    expect(made.key).toBe('key')
    expect((made.props as typeof props).children).toBe(props.children)
  })
})
