import './bar.css';
import type { PageProps } from '../page.tsx';
import { THEMES, type Theme } from '../state/display.ts';
import { FileActions } from './file-actions.tsx';
import { Popover } from './popover.tsx';
import { UndoRedo } from './undo-redo.tsx';
import { UnitsChoice } from './units-choice.tsx';
import { useMedia } from './use-media.ts';
import { ViewLink } from './view-link.tsx';

/** Files, undo, and how the page shows things. On a narrow screen a menu holds what does not fit. */
export function Bar(props: PageProps) {
  const isNarrow = useMedia('(max-width: 859px)').value;
  const isShort = useMedia('(max-width: 1349px)').value;
  const settings = (
    <>
      <UnitsChoice {...props} />
      <ThemeChoice {...props} />
    </>
  );
  return (
    <header class="bar">
      <h1>Soakbench</h1>
      <ViewLink {...props} />
      {isNarrow ? (
        <>
          <UndoRedo {...props} isShort />
          <Popover title="Menu">
            {(close) => (
              <>
                <FileActions {...props} isShort={false} onDone={close} />
                {settings}
              </>
            )}
          </Popover>
        </>
      ) : (
        <>
          <FileActions {...props} isShort={isShort} />
          <span class="gap" />
          <UndoRedo {...props} isShort={isShort} />
          {settings}
        </>
      )}
      <Notice {...props} />
    </header>
  );
}

const THEME_NAMES: Record<Theme, string> = { system: 'System', light: 'Light', dark: 'Dark' };

function ThemeChoice({ display }: PageProps) {
  return (
    <label>
      <span class="word">Theme</span>
      <select
        aria-label="Theme"
        value={display.theme.value}
        onChange={({ currentTarget: { value } }) => {
          display.theme.value = THEMES.find((theme) => theme === value) ?? 'system';
        }}
      >
        {THEMES.map((theme) => (
          <option key={theme} value={theme}>
            {THEME_NAMES[theme]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** What the user must know about the page itself, until it is waved away. */
function Notice({ display }: PageProps) {
  const notice = display.notice.value;
  return (
    <div role="status">
      {notice !== undefined && (
        <p class="notice">
          {notice}
          <button
            type="button"
            onClick={() => {
              display.notice.value = undefined;
            }}
          >
            Close
          </button>
        </p>
      )}
    </div>
  );
}
