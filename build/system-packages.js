/** What the tests need from the system: found, installed where that is allowed, or named in one line. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** The headless shell first: the same engine without a browser's own pages around it, at little more than half the work. */
const CHROMIUMS = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** The browser that the tests drive, or undefined. */
export function chromium() {
  const wish = process.env.CHROMIUM;
  return wish !== undefined ? wish : CHROMIUMS.find((file) => existsSync(file));
}

function hasLibusb() {
  if (process.platform !== 'linux') return true;
  return String(spawnSync('/sbin/ldconfig', ['-p']).stdout).includes('libusb-1.0.so.0');
}

/** The judge of the numbers; looked for where Debian puts it. */
function hasScipy() {
  if (process.platform !== 'linux') return true;
  return spawnSync('/usr/bin/python3', ['-c', 'import scipy.stats']).status === 0;
}

function missing() {
  const names = [];
  if (chromium() === undefined) names.push('chromium-headless-shell');
  if (!hasLibusb()) names.push('libusb-1.0-0');
  if (!hasScipy()) names.push('python3-scipy');
  return names;
}

/** True when everything is there, after installing what may be installed. */
export function ensureSystemPackages() {
  const names = missing();
  if (names.length === 0) return true;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.error(`Installing ${names.join(' ')} …`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit', env });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...names], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env,
    });
    if (missing().length === 0) return true;
  }
  console.error(
    `The tests need ${missing().join(' and ')}: run  sudo apt-get update && sudo apt-get install --no-install-recommends ${missing().join(' ')}` +
      (chromium() === undefined ? '  (or set CHROMIUM to a Chromium or Chrome program)' : ''),
  );
  return false;
}
