import { resolve } from 'node:path'
import { listLicenses } from './licenseList'

const showAll = process.argv.includes('--list')
const root = resolve(process.argv.slice(2).find(argument => !argument.startsWith('--')) ?? '.')
const { packages, unlisted } = listLicenses(root)

const byLicense = new Map<string, string[]>()
for (const { name, version, license } of packages) {
  const names = byLicense.get(license) ?? []
  names.push(`${name} ${version}`)
  byLicense.set(license, names)
}
const summary = [...byLicense].sort((a, b) => b[1].length - a[1].length)
if (showAll) for (const [license, names] of summary) console.log(`${license}\n  ${names.join('\n  ')}`)
else
  console.log(
    `licenses: ${packages.length} packages (${summary.map(([l, names]) => `${l} ${names.length}`).join(', ')})`,
  )
for (const { name, version, license } of unlisted)
  console.error(`${name} ${version}: license "${license}" is not on the list`)
if (packages.length === 0) console.error('No packages were seen: the check proves nothing.')
process.exitCode = packages.length === 0 || unlisted.length > 0 ? 1 : 0
