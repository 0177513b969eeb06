@echo off
rem Starts Clearbed from wherever it was unpacked.
setlocal
set "CLEARBED_HOME=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:MetaspaceSize=128m -XX:MaxTenuringThreshold=2 -Xshare:auto -Dsun.reflect.inflationThreshold=10000 -Djava.awt.headless=true "-Dclearbed.home=%CLEARBED_HOME%" %CLEARBED_JAVA_OPTS% -cp "%CLEARBED_HOME%\lib\clearbed.jar" clearbed.cli.Main %*
exit /b %ERRORLEVEL%
