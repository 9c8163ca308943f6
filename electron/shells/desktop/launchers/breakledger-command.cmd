@echo off
rem The commands of the installed program, run by the program itself without a window.
"%~dp0..\Breakledger.exe" --command %*
