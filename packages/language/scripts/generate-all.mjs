// Everything that is generated, in the order in which one thing needs the other.
await import('./embed-catalogue.mjs');
const { writeTemplates } = await import('./templates.mjs');
writeTemplates();
await import('./write-pages.mjs');
