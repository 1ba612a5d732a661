/**
 * An unpacked program for this system (or the one named by `--platform` and `--arch`) in dist/package, from the
 * bundles. The packager and the fuse writer are fetched when it runs: they want Node 22.12 or newer and are no part of
 * the lock file. Where they or the window's program cannot be had, it says so and ends with 2.
 */
import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { buildDesktop, buildPage, root } from './build.mjs'
import { notices } from './notices.mjs'

/** Switches in the program itself that nobody can turn back from outside. */
const fuses = {
  RunAsNode: false,
  EnableNodeOptionsEnvironmentVariable: false,
  EnableNodeCliInspectArguments: false,
  GrantFileProtocolExtraPrivileges: false,
  EnableCookieEncryption: true,
  EnableEmbeddedAsarIntegrityValidation: true,
  OnlyLoadAppFromAsar: true,
}

const { values } = parseArgs({
  options: {
    platform: { type: 'string', default: process.platform },
    arch: { type: 'string', default: process.arch },
  },
})
const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
const staged = join(root, 'dist', 'package', 'app')
const out = join(root, 'dist', 'package')

stage(await buildDesktop(), await buildPage())
writeAssociations()
const packed = npx('@electron/packager@20.3.0', [
  staged,
  'Slabwright',
  `--platform=${values.platform}`,
  `--arch=${values.arch}`,
  `--electron-version=${own.devDependencies.electron}`,
  '--asar',
  '--overwrite',
  `--out=${out}`,
  `--extend-info=${join(out, 'files.plist')}`,
])
const folder = packed && readdirSync(out).find(name => name.startsWith(`Slabwright-${values.platform}`))
if (!folder) {
  console.error('Nothing was packed: the packager or the program of the window could not be fetched here.')
  process.exit(2)
}
const written = npx('@electron/fuses@2.1.3', [
  'write',
  '--app',
  programIn(join(out, folder)),
  ...Object.entries(fuses).map(([name, isOn]) => `${name}=${isOn ? 'on' : 'off'}`),
])
if (!written) {
  rmSync(join(out, folder), { recursive: true, force: true })
  console.error('Nothing was packed: the switches of the program could not be set, and without them it is not safe.')
  process.exit(2)
}
console.log(join(out, folder))

function stage(main, page) {
  rmSync(staged, { recursive: true, force: true })
  mkdirSync(join(staged, 'desktop'), { recursive: true })
  const notMaps = path => !path.endsWith('.map') && !path.endsWith('stamp')
  cpSync(join(main, '..'), join(staged, 'desktop'), { recursive: true, filter: notMaps })
  cpSync(page, join(staged, 'renderer'), { recursive: true, filter: notMaps })
  cpSync(join(root, 'LICENSE'), join(staged, 'LICENSE'))
  writeFileSync(join(staged, 'THIRD-PARTY.txt'), notices(root))
  const { name, version, description, license } = own
  const manifest = { name, productName: 'Slabwright', version, description, license, main: 'desktop/main.cjs' }
  writeFileSync(join(staged, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`)
}

/** Site files open with the program: for macOS in the bundle itself, for Linux as two files to install beside it. */
function writeAssociations() {
  writeFileSync(
    join(out, 'files.plist'),
    `<?xml version="1.0" encoding="UTF-8"?>
<plist version="1.0"><dict>
  <key>CFBundleDocumentTypes</key><array><dict>
    <key>CFBundleTypeName</key><string>Site</string>
    <key>CFBundleTypeRole</key><string>Editor</string>
    <key>LSHandlerRank</key><string>Owner</string>
    <key>CFBundleTypeExtensions</key><array><string>slabwright.json</string></array>
  </dict></array>
</dict></plist>
`,
  )
  writeFileSync(
    join(out, 'slabwright.desktop'),
    '[Desktop Entry]\nType=Application\nName=Slabwright\nExec=Slabwright %f\nCategories=Office;\nMimeType=application/x-slabwright+json;\n',
  )
  writeFileSync(
    join(out, 'slabwright-mime.xml'),
    `<?xml version="1.0" encoding="UTF-8"?>
<mime-info xmlns="http://www.freedesktop.org/standards/shared-mime-info">
  <mime-type type="application/x-slabwright+json"><comment>Site</comment><glob pattern="*.slabwright.json"/></mime-type>
</mime-info>
`,
  )
}

function programIn(where) {
  const names = ['Slabwright.app', 'Slabwright.exe', 'Slabwright']
  return join(where, names.find(name => existsSync(join(where, name))) ?? 'Slabwright')
}

function npx(tool, rest) {
  const { status } = spawnSync('npx', ['--yes', '--loglevel=error', tool, ...rest], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  return status === 0
}
