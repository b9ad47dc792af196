// Long questions, answered off the page's own thread. It imports nothing by itself: the page tells it where the core is.

let started;
const cancelled = new Set();

onmessage = async ({ data: { start, cancel, id, verb, question } }) => {
  if (start) return void (started = open(start));
  if (cancel) return void cancelled.add(cancel);
  try {
    const verbs = await started;
    const tell = (told) => postMessage({ id, told });
    postMessage({ id, answer: await verbs[verb](question, { tell, stopped: () => cancelled.delete(id) }) });
  } catch (error) {
    postMessage({ id, fault: error.message });
  }
};

async function open({ glue, advice, source }) {
  const [core, { createVerbs }] = await Promise.all([import(glue), import(advice)]);
  await core.default({ module_or_path: source });
  return createVerbs(core);
}
