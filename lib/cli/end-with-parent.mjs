// Loaded into the site's process: when `serve` is gone, however it went, the site goes as well.
process.on('disconnect', () => process.exit(0))
