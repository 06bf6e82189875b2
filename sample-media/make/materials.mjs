// @ts-check
/** What things are made of, as POV-Ray declarations. @param {1 | -1} downY */
export function materials(downY) {
  const up = `<0, ${-downY}, 0>`;
  return `
#declare F_Dull = finish { ambient 0 diffuse 0.75 specular 0.06 roughness 0.12 }
#declare F_Paint = finish { ambient 0 diffuse 0.7 specular 0.22 roughness 0.045 }
#declare F_Steel = finish { ambient 0 diffuse 0.6 specular 0.5 roughness 0.03 metallic }
#declare F_Blade = finish { ambient 0 diffuse 0.72 specular 0.12 roughness 0.03 }
#declare Dust = texture { pigment { average pigment_map {
    [2 slope { ${up} } color_map { [0.45 rgbt <0.36,0.31,0.25,1>] [0.75 rgbt <0.36,0.31,0.25,0.75>] [1 rgbt <0.40,0.35,0.28,0.25>] }]
    [1 bozo scale 22 turbulence 0.9 omega 0.65 color_map { [0.35 rgbt <0.30,0.25,0.19,1>] [0.9 rgbt <0.33,0.28,0.22,0.45>] }]
  } } finish { F_Dull } }
#declare Splash = texture { pigment { wrinkles scale 30 turbulence 0.8 omega 0.7 color_map { [0.5 rgbt <0.30,0.25,0.19,1>] [0.75 rgbt <0.33,0.28,0.22,0.72>] [1 rgbt <0.37,0.32,0.25,0.4>] } } finish { F_Dull } }
#declare P_Rust = pigment { granite scale 14 color_map { [0 rgb <0.060,0.030,0.018>] [0.35 rgb <0.13,0.058,0.027>] [0.6 rgb <0.21,0.095,0.038>] [0.8 rgb <0.27,0.135,0.06>] [1 rgb <0.10,0.05,0.03>] } }
#declare P_RustFine = pigment { P_Rust scale 0.35 }
#declare P_Black = pigment { bozo scale 9 turbulence 1 color_map { [0 rgb 0.022] [0.6 rgb <0.034,0.033,0.032>] [1 rgb <0.052,0.048,0.043>] } }
#declare T_Housing = texture { pigment { wrinkles scale 46 turbulence 0.35 omega 0.7 lambda 2.3 pigment_map { [0.60 P_Black] [0.64 P_Rust] [1 P_RustFine] } }
    normal { average normal_map { [1 granite 0.25 scale 5] [1 bumps 0.12 scale 1.2] } } finish { F_Paint } }
  texture { Dust } texture { Splash }
#declare T_Band = texture { pigment { wrinkles scale 16 turbulence 0.5 pigment_map { [0.42 color rgb <0.19,0.185,0.175>] [0.58 color rgb <0.13,0.115,0.10>] [0.72 P_RustFine] [1 P_RustFine] } }
    normal { granite 0.18 scale 3 } finish { F_Steel } }
  texture { Splash scale 0.6 }
#declare T_Bolt = texture { pigment { wrinkles scale 5 turbulence 0.4 pigment_map { [0.3 color rgb <0.24,0.225,0.20>] [0.5 P_RustFine] [1 P_RustFine] } }
    normal { granite 0.3 scale 1.5 } finish { F_Steel specular 0.3 } }
#declare T_Rod = texture { pigment { wrinkles scale <26, 3, 3> turbulence 0.5 color_map { [0.25 rgb <0.36,0.33,0.28>] [0.5 rgb <0.27,0.23,0.18>] [0.68 rgb <0.21,0.135,0.08>] [0.85 rgb <0.15,0.08,0.045>] [1 rgb <0.11,0.06,0.035>] } }
    normal { granite 0.12 scale 2.5 } finish { F_Steel } }
#declare T_Grease = texture { pigment { bozo scale 6 turbulence 0.8 color_map { [0.45 rgbt <0.03,0.025,0.02,1>] [0.6 rgbt <0.03,0.025,0.02,0.35>] [1 rgbt <0.02,0.018,0.015,0.1>] } } finish { ambient 0 diffuse 0.7 specular 0.3 roughness 0.02 } }
#declare T_OverStroke = texture { pigment { wrinkles scale 5 turbulence 0.7 color_map { [0.0 rgb <0.74,0.135,0.03>] [0.55 rgb <0.66,0.12,0.03>] [0.72 rgb <0.42,0.10,0.04>] [0.78 rgb <0.16,0.075,0.04>] [1 rgb <0.2,0.13,0.09>] } }
    normal { granite 0.1 scale 2 } finish { F_Paint specular 0.08 } }
#declare T_Cast = texture { pigment { bozo scale 20 turbulence 1 omega 0.65 pigment_map { [0.3 color rgb <0.060,0.052,0.046>] [0.5 color rgb <0.092,0.075,0.060>] [0.62 P_RustFine] [1 P_Rust] } }
    normal { average normal_map { [1 granite 0.5 scale 4] [1 bumps 0.3 scale 1.4] } } finish { F_Dull specular 0.12 roughness 0.07 } }
  texture { Dust }
#declare T_NewCast = texture { pigment { bozo scale 12 turbulence 0.8 color_map { [0 rgb <0.030,0.034,0.040>] [0.7 rgb <0.042,0.046,0.052>] [1 rgb <0.075,0.072,0.066>] } }
    normal { average normal_map { [1 granite 0.3 scale 4] [1 bumps 0.25 scale 1.4] } } finish { F_Paint specular 0.3 } }
#declare T_Zinc = texture { pigment { rgb <0.42,0.40,0.33> } normal { granite 0.08 scale 2 } finish { F_Steel } }
#declare T_Bar = texture { pigment { wrinkles scale 12 turbulence 0.6 color_map { [0.4 rgb <0.055,0.052,0.050>] [0.7 rgb <0.10,0.09,0.08>] [1 rgb <0.16,0.11,0.08>] } } normal { granite 0.12 scale 3 } finish { F_Steel specular 0.3 } }
#declare T_Machined = texture { pigment { wrinkles scale 4 turbulence 0.4 color_map { [0.3 rgb <0.44,0.42,0.38>] [0.6 rgb <0.33,0.29,0.24>] [0.78 rgb <0.21,0.14,0.09>] [1 rgb <0.14,0.08,0.05>] } }
    normal { granite 0.1 scale 2 } finish { F_Steel specular 0.35 } }
#declare T_Plate = texture { pigment { wrinkles scale 30 turbulence 0.5 pigment_map { [0.45 P_Black] [0.6 P_Rust] [1 P_RustFine] } } normal { granite 0.3 scale 5 } finish { F_Dull } }
  texture { Dust } texture { Splash }
#declare P_Worn = pigment { granite scale 60 color_map { [0 rgb <0.030,0.029,0.028>] [0.5 rgb <0.050,0.045,0.040>] [0.75 rgb <0.085,0.066,0.050>] [1 rgb <0.13,0.085,0.055>] } }
#declare T_Axle = texture { pigment { wrinkles scale 90 turbulence 0.6 omega 0.7 pigment_map { [0.55 P_Worn] [0.72 P_Rust scale 1.5] [1 P_RustFine] } } normal { average normal_map { [1 granite 0.35 scale 9] [1 bumps 0.2 scale 2] } } finish { F_Dull } }
  texture { Dust }
#declare T_Spring = texture { pigment { granite scale 30 color_map { [0 rgb 0.02] [0.5 rgb <0.045,0.034,0.028>] [1 rgb <0.10,0.058,0.035>] } } normal { granite 0.4 scale 6 } finish { F_Dull } } texture { Dust }
#declare T_Drum = texture { pigment { P_Rust scale 2.4 } normal { granite 0.35 scale 10 } finish { F_Dull diffuse 0.5 } } texture { Dust }
#declare T_Tyre = texture { pigment { bozo scale 40 turbulence 0.8 color_map { [0 rgb 0.020] [0.7 rgb <0.032,0.030,0.028>] [1 rgb <0.07,0.062,0.05>] } } normal { granite 0.2 scale 6 } finish { F_Dull } } texture { Splash scale 2 }
#declare T_Rim = texture { pigment { wrinkles scale 40 color_map { [0.5 rgb <0.28,0.27,0.25>] [0.75 rgb <0.16,0.10,0.07>] [1 rgb <0.12,0.07,0.04>] } } normal { granite 0.2 scale 8 } finish { F_Dull } } texture { Dust }
#declare T_Hose = texture { pigment { bozo scale 8 color_map { [0 rgb 0.016] [1 rgb <0.045,0.042,0.038>] } } normal { bumps 0.2 scale 1.2 } finish { ambient 0 diffuse 0.7 specular 0.2 roughness 0.05 } } texture { Dust }
#declare T_Seal = texture { pigment { bozo scale 4 turbulence 0.5 color_map { [0 rgb 0.05] [1 rgb <0.12,0.105,0.088>] } } normal { bumps 0.15 scale 1 } finish { F_Dull } }
#declare T_TapeDirt = texture { pigment { wrinkles scale 17 turbulence 0.6 color_map { [0.45 rgbt <0.2,0.15,0.09,1>] [0.75 rgbt <0.22,0.17,0.11,0.62>] [1 rgbt <0.14,0.11,0.08,0.45>] } } finish { F_Blade } }
#declare T_TapeHook = texture { pigment { rgb <0.42,0.41,0.39> } normal { granite 0.05 scale 3 } finish { F_Steel } }
#declare T_TapeCase = texture { pigment { bozo scale 12 turbulence 0.7 color_map { [0 rgb <0.030,0.048,0.058>] [0.75 rgb <0.036,0.056,0.066>] [1 rgb <0.10,0.095,0.08>] } } normal { bumps 0.12 scale 0.8 } finish { F_Paint } }
#declare T_TapePad = texture { pigment { rgb <0.018,0.018,0.018> } normal { bumps 0.25 scale 1.1 } finish { F_Dull } }
#declare T_Glove = texture { pigment { bozo scale 14 turbulence 0.8 color_map { [0.2 rgb <0.050,0.052,0.055>] [0.65 rgb <0.068,0.068,0.068>] [1 rgb <0.14,0.12,0.095>] } } normal { average normal_map { [2 wrinkles 0.8 scale 8 turbulence 0.3] [1 quilted 0.4 scale 1.1] } } finish { F_Dull specular 0.12 roughness 0.06 } }
#declare T_Sleeve = texture { pigment { bozo scale 40 turbulence 0.6 color_map { [0 rgb <0.022,0.032,0.055>] [1 rgb <0.04,0.05,0.075>] } } normal { average normal_map { [3 wrinkles 0.45 scale <60, 18, 60> turbulence 0.4] [1 quilted 0.3 scale 1.4] } } finish { F_Dull } }
#declare T_Heap = texture { pigment { granite scale 500 color_map { [0 rgb <0.20,0.185,0.155>] [1 rgb <0.30,0.28,0.245>] } } normal { bumps 0.5 scale 140 } finish { F_Dull } }
#declare T_Gravel = texture { pigment { granite scale 75 color_map { [0 rgb <0.10,0.09,0.075>] [0.3 rgb <0.17,0.155,0.13>] [0.5 rgb <0.235,0.22,0.19>] [0.7 rgb <0.31,0.29,0.26>] [1 rgb <0.20,0.18,0.15>] } } normal { granite 0.9 scale 40 } finish { F_Dull } }
#declare T_Tree = texture { pigment { gradient ${up} turbulence <0.02, 0.09, 0.02> omega 0.62 octaves 6 color_map { [0 rgb <0.13,0.14,0.10>] [0.22 rgb <0.15,0.165,0.12>] [0.30 rgbt <0.22,0.24,0.20,0.05>] [0.36 rgbt <0.5,0.53,0.52,1>] [1 rgbt 1] } translate ${downY * 0.12}*y } finish { ambient 0.9 diffuse 0 } }
#declare T_Stone = texture { pigment { granite scale 30 color_map { [0 rgb <0.12,0.112,0.10>] [0.5 rgb <0.20,0.19,0.17>] [1 rgb <0.27,0.255,0.235>] } } normal { granite 0.6 scale 8 } finish { F_Dull } }
`;
}
