import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { DEMO_SCENARIOS } from '../files/demo-scenarios.ts';
import { fileName, saveFile } from '../files/export.ts';
import { openFile, openText, type Refusal } from '../files/open-file.ts';
import { wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { asFile, withListsOf } from '../state/cars.ts';
import type { Session } from '../state/session.ts';
import { ExportMenu } from './export-menu.tsx';
import { RefusalDialog } from './refusal-dialog.tsx';

interface FileActionsProps extends PageProps {
  readonly isShort: boolean;
  /** another car is on the page, or none: what held these actions may close */
  readonly onDone?: () => void;
}

/** Where cars come from and where they go: demo cars, files, tables and pictures. */
export function FileActions(props: FileActionsProps) {
  const { session, isShort, onDone } = props;
  const refusal = useSignal<Refusal | undefined>(undefined);
  const chooser = useRef<HTMLInputElement>(null);
  const take = (refused: Refusal | undefined) => {
    refusal.value = refused;
    if (refused === undefined) onDone?.();
  };
  const open = async (file: File | undefined) => {
    if (file !== undefined) take(await openFile(session, file));
  };
  const isDropping = useDrop(open);
  const word = isShort ? ['Open', 'Save'] : ['Open file', 'Save file'];
  return (
    <>
      <label>
        <span class="word">Scenario</span>
        <select
          aria-label="Scenario"
          class="scenario"
          value={nameInHand(session)}
          onChange={({ currentTarget: { value } }) => {
            const demo = DEMO_SCENARIOS.find(({ name }) => name === value);
            if (demo !== undefined) take(openText(session, demo.name, demo.text));
          }}
        >
          {!DEMO_SCENARIOS.some(({ name }) => name === nameInHand(session)) && (
            <option value={nameInHand(session)}>{nameInHand(session) || 'none'}</option>
          )}
          {DEMO_SCENARIOS.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => chooser.current?.click()}>
        {word[0]}
      </button>
      <input
        type="file"
        ref={chooser}
        accept=".json,application/json"
        aria-label="Scenario file"
        tabIndex={-1}
        hidden
        onChange={async ({ currentTarget }) => {
          await open(currentTarget.files?.[0]);
          // The same file may be chosen again once it has been put right.
          currentTarget.value = '';
        }}
      />
      <button type="button" disabled={session.inHand.value === undefined} onClick={() => saveScenario(props)}>
        {word[1]}
      </button>
      <ExportMenu {...props} />
      <button
        type="button"
        disabled={session.before.value === undefined}
        onClick={() => {
          session.clear();
          onDone?.();
        }}
      >
        New
      </button>
      {isDropping.value && <p class="drop">Let go to open the file</p>}
      {refusal.value && (
        <RefusalDialog
          refusal={refusal.value}
          onOpen={(text) => take(openText(session, refusal.value?.file ?? '', text))}
          onClose={() => {
            refusal.value = undefined;
          }}
        />
      )}
    </>
  );
}

/** The name of the file that was opened, which the choice of scenarios shows. */
const nameInHand = ({ before }: Session): string => before.value?.scenario.values.name ?? '';

/** The car in hand as a file, just as typed, with the variants and upgrades of the opened file as far as they fit it. */
function saveScenario({ session: { before, inHand }, display }: PageProps): void {
  const [opened, car] = [before.value, inHand.value];
  if (opened === undefined || car === undefined) return;
  const { document, note } = asFile(withListsOf(car, opened));
  if (note !== undefined) display.notice.value = note(wordingIn(display.units.value).flow);
  const text = `${JSON.stringify(document, undefined, 2)}\n`;
  saveFile(fileName([car.scenario.values.name], 'json'), new Blob([text], { type: 'application/json' }));
}

/** Takes a file that is dropped anywhere on the page. */
function useDrop(open: (file: File | undefined) => void) {
  const isOver = useSignal(false);
  const take = useRef(open);
  take.current = open;
  useEffect(() => {
    const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const over = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      isOver.value = true;
    };
    const leave = (event: DragEvent) => {
      // Without a next element the hand has left the window.
      if (event.relatedTarget === null) isOver.value = false;
    };
    const drop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      isOver.value = false;
      take.current(event.dataTransfer?.files[0]);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [isOver]);
  return isOver;
}
