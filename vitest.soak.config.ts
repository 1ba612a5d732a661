import { defineConfig } from 'vitest/config'

export default defineConfig({ test: { include: ['tests/soak/**/*.soak.ts'], testTimeout: 3_600_000 } })
