// A browser without a window, that asks nobody for anything.
import puppeteer from 'puppeteer-core';

export const launch = profile => puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', userDataDir: profile,
  args: [
    '--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--disable-background-networking', '--disable-component-update', '--disable-sync',
    '--no-first-run',
  ],
});
