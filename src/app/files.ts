import { readProject } from '../files/project/read.ts';
import { LARGEST_FILE_BYTES } from '../files/project/text.ts';
import { writeProject } from '../files/project/write.ts';
import type { Project } from '../model/project.ts';
import type { Notice } from '../state/session.ts';
import type { View } from '../state/view.tsx';
import { askForFile, fileNameOf, offerDownload } from '../storage/file-dialog.ts';
import { faultLine } from '../words/faults.ts';
import { noticeLine } from '../words/notices.ts';

const bytesOf = async (file: File): Promise<Uint8Array> => {
  // One byte more than the limit is enough for the reader to refuse it in its own words.
  const part = file.size > LARGEST_FILE_BYTES ? file.slice(0, LARGEST_FILE_BYTES + 1) : file;
  return new Uint8Array(await part.arrayBuffer());
};

/** Shows a notice; the newest stands first. */
export const notify = (view: View, notice: Omit<Notice, 'id'>): void => {
  view.session.setState(({ notices }) => {
    const id = 1 + Math.max(0, ...notices.map((one) => one.id));
    return { notices: [{ ...notice, id }, ...notices] };
  });
};

/** Where a project that was read goes to: a room of its own. */
export type Take = (project: Project) => Promise<void>;

/** Shows a file's project as a room of its own, or says line by line why not and leaves what is open as it is. */
export const openProjectFile = async (view: View, take: Take, file: File): Promise<void> => {
  let bytes: Uint8Array;
  try {
    bytes = await bytesOf(file);
  } catch {
    notify(view, { tone: 'caution', title: `${file.name} could not be read from the disk`, lines: [] });
    return;
  }
  const read = readProject(bytes);
  if (!read.ok) {
    const lines = read.faults.map(faultLine);
    notify(view, { tone: 'caution', title: `${file.name} was not opened; your project is as it was`, lines });
    return;
  }
  await take(read.project);
  if (read.notices.length > 0) notify(view, { tone: 'plain', title: file.name, lines: read.notices.map(noticeLine) });
};

export const openWithDialog = async (view: View, take: Take): Promise<void> => {
  const file = await askForFile();
  if (file) await openProjectFile(view, take, file);
};

export const saveToFile = (view: View): void => {
  const { project } = view.document.getState();
  offerDownload(fileNameOf(project.name), writeProject(project));
};
