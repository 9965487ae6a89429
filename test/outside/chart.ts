// no-unit-test: part of the tests
/**
 * The common 24-patch chart (McCamy, Marcus and Davidson 1976): published CIELAB (D50, 2 degrees) and 8-bit sRGB of its
 * patches, as given out with the chart from 2005 to 2014; from memory.
 */
export const chart: readonly {
  name: string;
  lab: [number, number, number];
  rgb: [number, number, number];
}[] = [
  { name: 'dark skin', lab: [37.986, 13.555, 14.059], rgb: [115, 82, 68] },
  { name: 'light skin', lab: [65.711, 18.13, 17.81], rgb: [194, 150, 130] },
  { name: 'blue sky', lab: [49.927, -4.88, -21.925], rgb: [98, 122, 157] },
  { name: 'foliage', lab: [43.139, -13.095, 21.905], rgb: [87, 108, 67] },
  { name: 'blue flower', lab: [55.112, 8.844, -25.399], rgb: [133, 128, 177] },
  { name: 'bluish green', lab: [70.719, -33.397, -0.199], rgb: [103, 189, 170] },
  { name: 'orange', lab: [62.661, 36.067, 57.096], rgb: [214, 126, 44] },
  { name: 'purplish blue', lab: [40.02, 10.41, -45.964], rgb: [80, 91, 166] },
  { name: 'moderate red', lab: [51.124, 48.239, 16.248], rgb: [193, 90, 99] },
  { name: 'purple', lab: [30.325, 22.976, -21.587], rgb: [94, 60, 108] },
  { name: 'yellow green', lab: [72.532, -23.709, 57.255], rgb: [157, 188, 64] },
  { name: 'orange yellow', lab: [71.941, 19.363, 67.857], rgb: [224, 163, 46] },
  { name: 'blue', lab: [28.778, 14.179, -50.297], rgb: [56, 61, 150] },
  { name: 'green', lab: [55.261, -38.342, 31.37], rgb: [70, 148, 73] },
  { name: 'red', lab: [42.101, 53.378, 28.19], rgb: [175, 54, 60] },
  { name: 'yellow', lab: [81.733, 4.039, 79.819], rgb: [231, 199, 31] },
  { name: 'magenta', lab: [51.935, 49.986, -14.574], rgb: [187, 86, 149] },
  { name: 'cyan', lab: [51.038, -28.631, -28.638], rgb: [8, 133, 161] },
  { name: 'white', lab: [96.539, -0.425, 1.186], rgb: [243, 243, 242] },
  { name: 'neutral 8', lab: [81.257, -0.638, -0.335], rgb: [200, 200, 200] },
  { name: 'neutral 6.5', lab: [66.766, -0.734, -0.504], rgb: [160, 160, 160] },
  { name: 'neutral 5', lab: [50.867, -0.153, -0.27], rgb: [122, 122, 121] },
  { name: 'neutral 3.5', lab: [35.656, -0.421, -1.231], rgb: [85, 85, 85] },
  { name: 'black', lab: [20.461, -0.079, -0.973], rgb: [52, 52, 52] },
];
