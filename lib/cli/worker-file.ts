/** Where a build leaves the worker that keeps pages, and where the site finds it to hand it out. */
export const WORKER = '.next/worker.js'
