/** Read first of all in a worker: it speaks the language of its window. */
import { speak } from '../../../shared-core/wording/say.ts';
import { languageOfWorker } from './worker-name.ts';

speak(languageOfWorker(self.name));
