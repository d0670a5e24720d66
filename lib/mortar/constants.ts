/**
 * Constants of nature that the sums rest on: atomic weights, and heats and densities of pure substances.
 * Figures of real limes, sands and earths are not here; they come in as material properties.
 */

/** Sources of these figures, as `source-id, locator`. */
export const SOURCES = {
  atomicWeights: 'iupac-atomic-weights, table Conventional atomic weights',
  thermodynamics: 'crc-handbook, table Standard thermodynamic properties',
  densities: 'crc-handbook, table Solid inorganic densities',
  vaporisation: 'crc-handbook, table Heat of vaporization',
  units: 'nist-sp-811, annex B',
} as const

/** Conventional atomic weights, g/mol. Source: {@link SOURCES.atomicWeights}. */
const ATOMIC_WEIGHTS = {
  H: 1.008,
  C: 12.011,
  O: 15.999,
  Mg: 24.305,
  Al: 26.9815,
  Si: 28.085,
  S: 32.06,
  Ca: 40.078,
  Fe: 55.845,
} as const

const { H, C, O, Mg, Al, Si, S, Ca, Fe } = ATOMIC_WEIGHTS

/** Molar masses, g/mol: sums of {@link ATOMIC_WEIGHTS}. */
export const MOLAR_MASS = {
  CaO: Ca + O,
  CaOH2: Ca + 2 * (O + H),
  CaCO3: Ca + C + 3 * O,
  CO2: C + 2 * O,
  H2O: 2 * H + O,
  MgO: Mg + O,
  MgOH2: Mg + 2 * (O + H),
  MgCO3: Mg + C + 3 * O,
  SiO2: Si + 2 * O,
  Al2O3: 2 * Al + 3 * O,
  Fe2O3: 2 * Fe + 3 * O,
  SO3: S + 3 * O,
} as const

/** Water bound per kg of CaO, kg/kg. */
export const WATER_PER_CAO = MOLAR_MASS.H2O / MOLAR_MASS.CaO
/** Water bound per kg of MgO where it hydrates, kg/kg. */
export const WATER_PER_MGO = MOLAR_MASS.H2O / MOLAR_MASS.MgO

/** Heats of formation at 25 °C, kJ/mol. Source: {@link SOURCES.thermodynamics}. */
export const HEAT_OF_FORMATION = {
  CaO: -634.9,
  CaOH2: -985.2,
  CaCO3: -1207.6,
  CO2: -393.5,
  H2O: -285.8,
  MgO: -601.6,
  MgOH2: -924.5,
} as const

/** Heat given off as one kg of CaO slakes with liquid water, kJ/kg. */
export const SLAKING_HEAT_CAO =
  (HEAT_OF_FORMATION.CaO + HEAT_OF_FORMATION.H2O - HEAT_OF_FORMATION.CaOH2) / (MOLAR_MASS.CaO / 1000)

/** Heat capacities at 25 °C, kJ/(kg·K): the source's J/(mol·K) over the molar mass. */
export const HEAT_CAPACITY = {
  CaOH2: 87.5 / MOLAR_MASS.CaOH2,
  CaO: 42.0 / MOLAR_MASS.CaO,
  CaCO3: 83.5 / MOLAR_MASS.CaCO3,
  quartz: 44.4 / MOLAR_MASS.SiO2,
  water: 75.3 / MOLAR_MASS.H2O,
} as const

/** Heat that boils off one kg of water at 100 °C, kJ/kg. Source: {@link SOURCES.vaporisation}. */
export const VAPORISATION_HEAT = 40.65 / (MOLAR_MASS.H2O / 1000)

/** Boiling point of water at sea level, °C. */
export const BOILING_C = 100

/** Densities of crystals, kg/m³. Source: {@link SOURCES.densities}. */
export const CRYSTAL_DENSITY = { CaO: 3340, CaOH2: 2200, CaCO3: 2710, quartz: 2648, MgO: 3600 } as const
