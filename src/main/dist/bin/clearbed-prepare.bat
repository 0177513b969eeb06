@echo off
rem Makes the class archive that lets clearbed start sooner. It holds for this Java and this folder:
rem run it again after either has changed. Without the archive, clearbed only starts more slowly.
setlocal
set "CLEARBED_HOME=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
cd /d "%CLEARBED_HOME%\lib" || exit /b 3
if exist clearbed-windows.for del clearbed-windows.for
if exist clearbed-windows.jsa del clearbed-windows.jsa
set "CLEARBED_JAVA_OPTS=-XX:SharedClassListFile=clearbed.classes -XX:SharedArchiveFile=clearbed-windows.jsa -Xshare:dump"
call "%~dp0clearbed.bat" >nul 2>nul
if not exist clearbed-windows.jsa echo clearbed-prepare: this Java makes no class archive; clearbed works without 1>&2& exit /b 3
>clearbed-windows.for echo %CLEARBED_HOME% %JAVA%
