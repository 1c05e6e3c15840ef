/**
 * Heat that melts a kilogram of ice at 0 degC [J/kg].
 *
 * [1] CRC Handbook of Chemistry and Physics. IAPWS-95 with IAPWS R10-06 gives 333.43 kJ/kg.
 */
export const HEAT_OF_MELTING = 333.55e3;

/**
 * Where ice and water are in balance at 1 atm [K]; heat in a tank of ice is counted from liquid of this temperature.
 */
export const MELTING_POINT = 273.15;

/** Density of ice at 0 degC and 1 atm [kg/m3]: IAPWS R10-06(2009) gives 916.7. */
export const ICE_DENSITY = 917;
