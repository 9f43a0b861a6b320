import { expect, test } from '@playwright/test'

declare global {
  interface Window {
    violations: string[]
  }
}

/** Said by the software renderer about its own speed, not by the page. */
const FROM_THE_RENDERER = /GPU stall due to ReadPixels/

test('the page opens within its policy, with a silent console, asking nobody else for anything', async ({
  page,
  baseURL,
}) => {
  const said: string[] = []
  const asked: string[] = []
  page.on('console', (message) => {
    if (!FROM_THE_RENDERER.test(message.text())) said.push(`${message.type()}: ${message.text()}`)
  })
  page.on('pageerror', (error) => said.push(`error: ${error.message}`))
  page.on('requestfailed', (request) => said.push(`failed: ${request.url()}`))
  page.on('response', (response) => {
    if (response.status() >= 400) said.push(`${response.status()}: ${response.url()}`)
  })
  page.on('request', (request) => asked.push(request.url()))
  await page.addInitScript(() => {
    window.violations = []
    document.addEventListener('securitypolicyviolation', (event) => {
      window.violations.push(`${event.violatedDirective}: ${event.blockedURI}`)
    })
  })

  await page.goto('/')
  await expect(page.locator('canvas').first()).toBeVisible()
  await expect(page.getByRole('button').first()).toBeVisible()
  // What is loaded after the first picture counts too.
  await page.waitForLoadState('networkidle')

  expect(await page.evaluate(() => window.violations)).toEqual([])
  expect(said).toEqual([])
  expect(asked.length).toBeGreaterThan(2)
  expect(asked.filter((url) => new URL(url).origin !== new URL(String(baseURL)).origin)).toEqual([])
  expect(await page.evaluate(() => window.crossOriginIsolated)).toBe(true)
})

test('the policy also stands in the page, for hosts that send no headers', async ({ page }) => {
  await page.goto('/')
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')
  expect(policy).toContain("default-src 'none'")
  expect(policy).not.toContain('unsafe')
})
