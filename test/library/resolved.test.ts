import { expect, test } from 'vitest';
import { declare, pack, Report } from '../../language/build/index.js';
import { library, LIBRARY_SCHEME } from '../../language/library/index.js';
import { libraryFiles } from './files.js';

/** What is shipped is made from the texts by the build; when this fails, the build has not run since they changed. */
test.each(libraryFiles)('$name is shipped as it is written', ({ name, syntax }) => {
  const uri = `${LIBRARY_SCHEME}/${name}`;
  const report = new Report(uri);
  const beside = { stands: () => false, text: () => undefined };
  const written = declare(syntax, uri, () => undefined, report, beside);
  const shipped = library.find(file => file.uri === uri);
  expect(report.problems).toEqual([]);
  expect(shipped && JSON.stringify(pack(shipped)) === JSON.stringify(pack(written))).toBe(true);
});

test('nothing is shipped that is not written', () => {
  expect(library.map(file => file.uri).sort()).toEqual(
    libraryFiles.map(file => `${LIBRARY_SCHEME}/${file.name}`).sort(),
  );
});
