// A process that keeps one core busy until it is ended: what a reader is to its neighbours, and nothing of ours.
process.on('disconnect', () => process.exit(0));
(function turn() {
  const end = performance.now() + 50;
  while (performance.now() < end);
  setImmediate(turn);
})();
