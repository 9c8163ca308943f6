import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { pictureHeader } from '#domain/strength/face/pictureHeader.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { drawnFace } from '#tests/reference/faces/drawnFace.ts'
import { pngOf } from '#tests/reference/faces/pngOf.ts'
import { smallPictures } from '#tests/reference/faces/smallPictures.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { hosts, type OpenedPage, openPage } from '../harness/openPage.ts'
import { tabTo } from '../harness/tabTo.ts'
import { at } from '../screens/screenSteps.ts'

const face = drawnFace('plain', 5, 400, 300)

/** A JPEG picture with the orientation 6 of Exif: its first row of pixels belongs at the right. */
function heldUpright(jpeg: Uint8Array): Uint8Array {
  const exif = new TextEncoder().encode('Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0')
  return Uint8Array.from([...jpeg.slice(0, 2), 0xff, 0xe1, 0, exif.length + 2, ...exif, ...jpeg.slice(2)])
}

/** A photograph is added, its corners are set, its wood failure is read and decided: by keyboard. */
describe.skipIf(chromiumPath === null).each(hosts)('wood failure from a photograph, %s', (name) => {
  let opened: OpenedPage
  let host: ScriptedHost
  const dialog = () => opened.page.locator('dialog[open]')
  const decided = () => host.calls.filter((call) => call.name === 'pictures.decide').map(({ input }) => input)

  beforeAll(async () => {
    host = createScriptedHost()
    host.addBreak(4812)
    opened = await openPage({ host: name, engine: host })
    await at('#/breaks/1')(opened.page)
  })
  afterAll(async () => opened?.close())

  it('takes a picture that is chosen, and shows it small', async () => {
    const chooser = opened.page.waitForEvent('filechooser')
    await opened.page.getByRole('button', { name: 'Add photographs' }).focus()
    await opened.page.keyboard.press('Enter')
    await (await chooser).setFiles({ name: 'face a.png', mimeType: 'image/png', buffer: pngOf(face) })
    await opened.page.locator('canvas.thumbnail[width="360"]').waitFor()
    await opened.page.getByText('Nothing read from it yet.').waitFor()
  })

  it('moves a corner by mouse, and each of them by keyboard', async () => {
    const { page } = opened
    await page.getByRole('button', { name: 'Wood failure from Photograph face a.png' }).focus()
    await page.keyboard.press('Enter')
    const handle = dialog().locator('.corner-handle').first()
    await handle.waitFor()
    const stage = (await dialog().locator('.corner-layer').boundingBox())!
    const place = (x: number, y: number) => [stage.x + x * stage.width, stage.y + y * stage.height] as const
    await page.mouse.move(...place(0.1, 0.1))
    await page.mouse.down()
    await page.mouse.move(...place(0.2, 0.25))
    await page.mouse.up()
    await dialog()
      .getByRole('button', { name: /^Upper left corner, 20\.\d % across, 25\.\d % down$/ })
      .waitFor()
    for (const [corner, { x, y }] of face.corners.entries()) {
      const handleOf = dialog().locator('.corner-handle').nth(corner)
      await handleOf.focus()
      const [, across, down] = /, (.*) % across, (.*) % down/.exec((await handleOf.getAttribute('aria-label'))!)!
      await press('ArrowRight', 'ArrowLeft', 100 * (x / face.width) - Number(across))
      await press('ArrowDown', 'ArrowUp', 100 * (y / face.height) - Number(down))
    }
    async function press(forward: string, back: string, percent: number): Promise<void> {
      for (let i = 0; i < Math.round(Math.abs(percent)); i++) await page.keyboard.press(percent > 0 ? forward : back)
    }
  })

  it('proposes what the face was drawn with, and another share at another threshold', async () => {
    const { page } = opened
    await expect.poll(() => dialog().getByRole('status').textContent()).toBe('')
    await dialog()
      .getByText(/% exactly/)
      .waitFor()
    const exactly = async () => Number(/([\d.]+) % exactly/.exec((await dialog().textContent())!)![1])
    await expect.poll(async () => Math.abs((await exactly()) - face.tornPercent)).toBeLessThan(5)
    const before = await exactly()
    await tabTo(page, 'input[type="range"]')
    for (let i = 0; i < 40; i++) await page.keyboard.press('ArrowRight')
    await expect.poll(exactly).toBeLessThan(before)
  })

  it('asks for the decision of the person, keeps both numbers, and goes on to the faces', async () => {
    const { page } = opened
    await page.keyboard.press('Enter')
    await dialog().getByText('you decide').waitFor()
    expect(decided()).toEqual([])
    await dialog().getByRole('slider', { name: 'Wood failure' }).focus()
    await page.keyboard.type('35')
    await page.keyboard.press('Enter')
    await dialog()
      .getByRole('heading', { name: /^The faces of/ })
      .waitFor()
    await dialog().getByText('35 %', { exact: true }).waitFor()
    expect(decided()).toMatchObject([{ attachmentId: 1, decidedPercent: 35, by: 'bench 1', maskWidth: 480 }])
    // Nobody typed here, and yet what was decided is kept with the picture alone
    await page.keyboard.press('Escape')
    await dialog().getByRole('button', { name: 'Leave without saving' }).click()
    await page.getByText(/^35 % wood failure decided, \d+\.\d % by the picture\.$/).waitFor()
  })

  it('shows a picture upright whose camera was held upright', async () => {
    const chooser = opened.page.waitForEvent('filechooser')
    await opened.page.getByRole('button', { name: 'Add photographs' }).click()
    const rotated = Buffer.from(heldUpright(smallPictures.jpeg))
    await (await chooser).setFiles({ name: 'upright.jpg', mimeType: 'image/jpeg', buffer: rotated })
    await opened.page.locator('canvas.thumbnail[width="5"][height="7"]').waitFor()
  })

  it('keeps no damaged picture, and says of one that is kept that it cannot be shown', async () => {
    const { page } = opened
    const cut = smallPictures.png.slice(0, 40)
    const chooser = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'Add photographs' }).click()
    const [mimeType, buffer] = ['image/png', Buffer.from(cut)]
    await (await chooser).setFiles(['cut off.png', 'too.png'].map((name) => ({ name, mimeType, buffer })))
    await page.getByText(/^"cut off.png" is not kept: it is damaged.* Not kept either: "too.png".$/).waitFor()
    const keptBefore = { specimenId: null, breakId: 1, name: 'kept before.png', content: cut, by: 'bench 1' }
    await host.handlers['pictures.attach'](keptBefore)
    await page.getByText('This picture cannot be shown.').waitFor()
    expect(await page.getByText('cut off.png', { exact: true }).count()).toBe(0)
  })

  it('takes pictures that are dropped, and those that are pasted', async () => {
    const { page } = opened
    const give = (how: 'drop' | 'paste', named: string) =>
      page.evaluate(
        ([event, name, bytes]) => {
          const data = new DataTransfer()
          data.items.add(new File([Uint8Array.from(bytes)], name, { type: 'image/jpeg' }))
          const section = document.querySelector('.pictures')!
          if (event === 'paste')
            document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }))
          else section.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }))
        },
        [how, named, [...smallPictures.jpeg]] as const,
      )
    await give('drop', 'dropped.jpg')
    await page.getByText('dropped.jpg').waitFor()
    await give('paste', 'pasted.jpg')
    await page.getByText('pasted.jpg').waitFor()
  })

  it('leaves to a field the text of cells that were copied with a picture of them', async () => {
    const isTaken = await opened.page.evaluate(() => {
      const data = new DataTransfer()
      data.items.add(new File([], 'cells.png', { type: 'image/png' }))
      data.setData('text/plain', '28')
      const pasted = new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
      return !document.querySelector('input[aria-label="Number of a block"]')!.dispatchEvent(pasted)
    })
    expect(isTaken).toBe(false)
  })

  it('is not left for a file that is dropped beside the photographs', async () => {
    const taken = await opened.page.evaluate(() =>
      ['dragover', 'drop'].map((event) => {
        const data = new DataTransfer()
        data.items.add(new File([], 'a.jpg'))
        const dropped = new DragEvent(event, { dataTransfer: data, bubbles: true, cancelable: true })
        // What is prevented is not done by the browser, which would open the file
        return [!document.body.dispatchEvent(dropped), data.dropEffect]
      }),
    )
    expect(taken).toEqual([
      [true, 'none'],
      [true, 'none'],
    ])
  })

  it('says where the camera may not be used', async () => {
    const { page } = opened
    await page.context().grantPermissions([])
    await page.getByRole('button', { name: 'Take a photograph' }).click()
    await dialog().getByText('The camera may not be used by this page.').waitFor()
    await page.keyboard.press('Escape')
  })

  it('takes photographs with the camera by keyboard, and switches it off', async () => {
    const { page } = opened
    await page.context().grantPermissions(['camera'])
    await page.evaluate(() => {
      const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices)
      navigator.mediaDevices.getUserMedia = async (what) => {
        const stream = await ask(what)
        Object.assign(window, { cameraStream: stream })
        return stream
      }
    })
    const tracks = () =>
      page.evaluate(() =>
        (window as { cameraStream?: MediaStream }).cameraStream
          ?.getTracks()
          .map(({ kind, readyState }) => [kind, readyState]),
      )
    await page.getByRole('button', { name: 'Take a photograph' }).focus()
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => (document.querySelector('video')?.videoWidth ?? 0) > 0)
    expect(await tracks()).toEqual([['video', 'live']])
    await page.keyboard.press('Enter')
    await dialog()
      .getByText(/^One photograph is stored/)
      .waitFor()
    await page.keyboard.press('Escape')
    await page.getByText(/^photograph \d{4}-\d\d-\d\d /).waitFor()
    expect(await tracks()).toEqual([['video', 'ended']])
    const sent = host.calls.findLast((call) => call.name === 'pictures.attach')!.input as { content: Uint8Array }
    expect(pictureHeader(sent.content)).toMatchObject({ mediaType: 'image/jpeg', width: expect.any(Number) })
  })

  it('shows the pictures of the faces on the page of the specimen, beside its own, and opens each', async () => {
    const { page } = opened
    await at('#/specimens/1')(page)
    const faces = page.getByRole('region', { name: /^Broken faces/ })
    await faces.getByText('35 % wood failure decided', { exact: false }).waitFor()
    const chooser = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'Add photographs' }).click()
    await (await chooser).setFiles({ name: 'block.png', mimeType: 'image/png', buffer: pngOf(face) })
    await page.getByRole('button', { name: 'Photograph block.png' }).focus()
    await page.keyboard.press('Enter')
    await dialog().locator('canvas.picture-large[width="400"]').waitFor()
    await dialog()
      .getByText(/^Added .* MB, kept as it came\.$/)
      .waitFor()
    await page.keyboard.press('Escape')
    expect(opened.problems).toEqual([])
  })
})
