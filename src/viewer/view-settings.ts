import '../../node_modules/lil-gui/dist/lil-gui.min.css';
import './view-settings.css';
import GUI from 'lil-gui';
import { APART_CHOICES, type Drawing, TUBE_CHOICES } from './state/drawing.ts';

/**
 * Opens the settings of how blocks are drawn. Lists and boxes only: they are the controls of this panel that keys
 * reach, and that a turning wheel does not change.
 *
 * @param place - element to stand in
 * @param leave - asked to close them, by the Escape key
 * @returns closes them
 */
export function openViewSettings(place: HTMLElement, drawing: Drawing, leave: () => void): () => void {
  const panel = new GUI({ container: place, injectStyles: false, title: 'How it is drawn', width: 236 });
  const { hasCellLines, tubes, apart } = drawing;
  const shown = { cellLines: hasCellLines.value, tubes: tubes.value, apart: apart.value };
  panel
    .add(shown, 'cellLines')
    .name('Lines between cells')
    .onChange((value: boolean) => {
      hasCellLines.value = value;
    });
  panel
    .add(shown, 'tubes', TUBE_CHOICES)
    .name('Tubes drawn')
    .onChange((value: number) => {
      tubes.value = value;
    });
  panel
    .add(shown, 'apart', APART_CHOICES)
    .name('Layers apart')
    .onChange((value: number) => {
      apart.value = value;
    });
  panel.domElement.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') leave();
  });
  return () => panel.destroy();
}
