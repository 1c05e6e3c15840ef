import { expose } from 'comlink';
import { createSimService } from './sim-service.ts';

expose(createSimService());
