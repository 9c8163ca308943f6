@echo off
rem The commands of the installed program: runs its own Node without opening a window.
set ELECTRON_RUN_AS_NODE=1
"%~dp0..\Breakledger.exe" "%~dp0app\dist\desktop\commands.js" %*
