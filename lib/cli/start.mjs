// The door to every verb. It runs before anything is installed, so it uses Node alone, and says so plainly when
// Node is too old; keep its syntax that of old versions.
import('./first-steps.mjs').then(
  (steps) => steps.start(process.argv.slice(2)),
  (error) => {
    console.error(`Node ${process.versions.node} could not start this site, which needs Node 20.19 or newer.`)
    console.error(error)
    process.exitCode = 1
  },
)
