// Generates src/generated from the grammar. The generator's parser library uses Object.groupBy, which
// Node 20 does not have; the shipped code does not need it.
Object.groupBy ??= (items, keyOf) => {
  const groups = Object.create(null);
  let index = 0;
  for (const item of items) {
    const key = keyOf(item, index++);
    groups[key] ??= [];
    groups[key].push(item);
  }
  return groups;
};
process.argv.splice(2, process.argv.length, 'generate', '--mode=production');
await import(new URL('../bin/langium.js', import.meta.resolve('langium-cli')).href);
