@echo off
rem Starts Clearbed from wherever it was unpacked.
setlocal
set "CLEARBED_HOME=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
if "%JAVA%"=="java" where java >nul 2>nul
if "%JAVA%"=="java" if errorlevel 1 echo clearbed: no Java found; install Java 17 or newer, or set JAVA_HOME to its folder 1>&2& exit /b 2
rem The class archive holds for the Java and the folder that clearbed-prepare.bat made it with.
set "MADE_FOR="
set ARCHIVE=
if exist "%CLEARBED_HOME%\lib\clearbed-windows.for" set /p MADE_FOR=<"%CLEARBED_HOME%\lib\clearbed-windows.for"
if "%MADE_FOR%"=="%CLEARBED_HOME% %JAVA%" set ARCHIVE="-XX:SharedArchiveFile=%CLEARBED_HOME%\lib\clearbed-windows.jsa"
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:MetaspaceSize=128m -XX:MaxTenuringThreshold=2 -XX:-UsePerfData -Xshare:auto %ARCHIVE% -Dsun.reflect.inflationThreshold=10000 -Djava.awt.headless=true "-Dclearbed.home=%CLEARBED_HOME%" %CLEARBED_JAVA_OPTS% -cp "%CLEARBED_HOME%\lib\clearbed.jar" clearbed.cli.Main %*
exit /b %ERRORLEVEL%
