// The engine, apart from the page, so that the page never stands still and a long answer can be given up by ending this worker.
import { dotnet } from './_framework/dotnet.js';

const data = async () => {
  const answer = await fetch('fitcheck.data');
  if (!answer.ok) throw new Error(`fitcheck.data: ${answer.status}`);
  return new Uint8Array(await new Response(answer.body.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer());
};

try {
  const [runtime, packed] = await Promise.all([dotnet.create(), data()]);
  runtime.setModuleImports('worker', { told: (job, line) => postMessage({ job, line }) });
  const engine = (await runtime.getAssemblyExports(runtime.getConfig().mainAssemblyName)).FitCheck.Page.Static.Engine;
  engine.Open(packed);
  onmessage = ({ data: { id, name, fields, files, isPart, job } }) => {
    try {
      const [status, type, saveAs, text] = engine.Answer(name, fields, files, isPart, job);
      postMessage({ id, status: Number(status), type, saveAs, text });
    } catch (error) {
      postMessage({ id, defect: String(error) });
    }
  };
  postMessage({ ready: true });
  for (let step = 0; engine.Warm(step); step++) await new Promise(done => setTimeout(done));
} catch (error) {
  postMessage({ failed: String(error) });
}
