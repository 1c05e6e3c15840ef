// Makes sure that a Chromium is there for the browser tests; installs Debian's where it may.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const path = process.env.CHROMIUM ?? '/usr/bin/chromium';
const run = (...command) =>
  spawnSync(command[0], command.slice(1), {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

if (!existsSync(path)) {
  const mayInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get') && path === '/usr/bin/chromium';
  const isInstalled =
    mayInstall &&
    run('apt-get', 'update') &&
    run(
      'apt-get',
      '-o',
      'DPkg::Lock::Timeout=300',
      'install',
      '-y',
      '--no-install-recommends',
      'chromium',
      'fonts-dejavu-core',
    );
  if (!isInstalled || !existsSync(path)) {
    console.error(`No Chromium at ${path}: install one, or set CHROMIUM to its path.`);
    process.exitCode = 1;
  }
}
