/** Loaded into the built program by a test: an error that nobody catches, when the test says so. */
process.on('SIGUSR2', () => {
  throw new Error('thrown by a test');
});
