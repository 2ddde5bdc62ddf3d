@echo off
rem Starts holdfast.jar, which lies beside this script (Windows). Needs Java 17 or newer.
setlocal
set "java=java"
if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
rem Reports are UTF-8: the console reads it while this runs.
set "before="
for /f "tokens=2 delims=:." %%p in ('chcp') do set "before=%%p"
chcp 65001 >nul 2>nul
rem These are over before the second compiler has paid for itself.
set "compiler="
for %%c in (check solve rock new defaults) do if "%~1"=="%%c" set "compiler=-XX:TieredStopAtLevel=1"
"%java%" -Xlog:disable -Xlog:all=error:stderr -XX:+UseSerialGC %compiler% %HOLDFAST_JAVA_OPTS% -jar "%~dp0holdfast.jar" %*
set "code=%errorlevel%"
if "%code%"=="9009" (
  echo holdfast: Java 17 or newer is needed and no java was found ^(JAVA_HOME, PATH^). 1>&2
  set "code=3"
)
if defined before chcp %before% >nul 2>nul
exit /b %code%
