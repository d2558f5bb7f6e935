/** Hands a file to the user: by the system's dialogue in Electron, else the way the browser does, through its own saving. */
import { savingState } from './saving-state.svelte.ts';

export function saveBlob(blob: Blob, name: string, page: Window = window): void {
  savingState.says = null;
  const { bench } = page;
  if (bench === undefined) download(blob, name, page.document);
  else
    void blob
      .arrayBuffer()
      .then((bytes) => bench.save(name, new Uint8Array(bytes)))
      .then(
        (saved) => (savingState.says = saved.ok ? null : saved.problem.says),
        () => (savingState.says = `${name} was not saved, for the program did not answer; try it once more.`),
      );
}

function download(blob: Blob, name: string, document: Document): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
