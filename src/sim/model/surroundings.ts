import type { Config } from '../scenario/config.ts';
import type { DriveInputs } from './drive-cycle.ts';
import type { ExchangerAir, LoopSurroundings } from './loop-element.ts';
import { Room } from './room.ts';

/** Air round the car in one instant: outside, or the room, and what it is to intake, bay and exchanger. K. */
export class Surroundings implements LoopSurroundings {
  temperature = 0;
  bay = 0;
  freshAir = 0;
  readonly exchangerAir: ExchangerAir = { speed: 0, temperature: 0, pressure: 0 };
  readonly secondExchangerAir: ExchangerAir = { speed: 0, temperature: 0, pressure: 0 };
  /** place of the room in the state; -1 without one */
  readonly index: number;
  private readonly room: Room | undefined;
  private readonly pickUp: number;

  /** @param index - where the room would stand in the state */
  constructor({ room, intake }: Config, index: number) {
    this.room = room && new Room(room);
    this.index = room === undefined ? -1 : index;
    this.pickUp = intake.pickUp;
  }

  /** Takes the air round the car: that of the room where there is one, given as `room` [K]. */
  set(room: number, inputs: DriveInputs): void {
    const temperature = this.room === undefined ? inputs.outside : room;
    this.temperature = temperature;
    this.bay = temperature + inputs.bayAboveOutside;
    this.freshAir = temperature + this.pickUp;
    this.setAir(this.exchangerAir, inputs.airSpeed, inputs.exchangerPickUp, inputs.outsidePressure);
    this.setAir(this.secondExchangerAir, inputs.secondAirSpeed, inputs.secondPickUp, inputs.outsidePressure);
  }

  /** What it comes to at the end of a stage with this air flow into the engine [kg/s]. */
  temperatureAt(s: number, base: Float64Array, inputs: DriveInputs, airFlow: number): number {
    if (this.room === undefined) return inputs.outside;
    return this.room.temperatureAt(base[this.index], s, inputs.outside, inputs.outsidePressure, airFlow);
  }

  private setAir(air: ExchangerAir, speed: number, pickUp: number, pressure: number): void {
    air.speed = speed;
    air.temperature = this.temperature + pickUp;
    air.pressure = pressure;
  }
}
