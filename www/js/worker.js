// Long questions, answered off the page's own thread. It imports nothing by itself: the page tells it where the core is.

let started;

onmessage = async ({ data: { start, id, verb, args } }) => {
  if (start) return void (started = open(start));
  try {
    const verbs = await started;
    postMessage({ id, answer: await verbs[verb](...args) });
  } catch (error) {
    postMessage({ id, fault: error.message });
  }
};

async function open({ glue, advice, source }) {
  const [core, { createVerbs }] = await Promise.all([import(glue), import(advice)]);
  await core.default({ module_or_path: source });
  return createVerbs(core);
}
