import chromium from '@sparticuz/chromium'

await chromium.executablePath()
