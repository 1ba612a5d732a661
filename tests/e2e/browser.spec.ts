import { expect, test } from 'playwright/test'

test('the browser that was found draws on a canvas', async ({ page }) => {
  await page.setContent('<canvas width="4" height="4"></canvas>')
  const pixel = await page.evaluate(() => {
    const context = document.querySelector('canvas')?.getContext('2d')
    if (!context) return null
    context.fillStyle = 'rgb(10, 20, 30)'
    context.fillRect(0, 0, 4, 4)
    return [...context.getImageData(1, 1, 1, 1).data]
  })
  expect(pixel).toEqual([10, 20, 30, 255])
})
