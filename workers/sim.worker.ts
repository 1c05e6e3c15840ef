import { expose } from 'comlink';
import { startHelpers } from './helpers.ts';
import { createSimService } from './sim-service.ts';

expose(createSimService(startHelpers));
