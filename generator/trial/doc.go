// Package trial tries a finished handbook from outside: it builds the program,
// publishes the demo course with it, serves the folder as any static server
// would, and lets judges that are not ours look at it: a browser, the Nu HTML
// checker, axe-core. It exists because a page can pass every test of the code
// that made it and still be wrong on a student's phone.
//
// All of its tests carry the build tag judges and need the tools that
// testdata/test.sh installs. A tool that is missing is a failure.
package trial
