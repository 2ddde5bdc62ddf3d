@echo off
rem Starts holdfast.jar, which lies beside this script (Windows). Needs Java 17 or newer.
rem
rem HOLDFAST_JAVA_OPTS  more options for the Java machine, such as -Xmx4g
rem HOLDFAST_CACHE      folder for archives of loaded classes that make later starts quicker; "none" for no archives
setlocal
set "jar=%~dp0holdfast.jar"
if not exist "%jar%" (
  echo holdfast: "%jar%" is missing; build it with: mvn -q -DskipTests package 1>&2
  exit /b 3
)
set "java="
if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
if not defined java for %%J in (java.exe) do set "java=%%~$PATH:J"
if not defined java (
  echo holdfast: Java 17 or newer is needed and no java was found ^(JAVA_HOME, PATH^). 1>&2
  exit /b 3
)
rem Reports are UTF-8: the console reads it while this runs.
set "before="
for /f "tokens=2 delims=:." %%P in ('chcp') do set "before=%%P"
chcp 65001 >nul 2>nul
rem These are over before the second compiler has paid for itself.
set "compiler="
for %%C in (check solve rock new defaults) do if "%~1"=="%%C" set "compiler=-XX:TieredStopAtLevel=1"

rem One archive of loaded classes a command, made at the end of its first run and named by size and day of the jar and of
rem the Java machine. It lies beside the jar: a path that Java can read there it can write as well.
set "archive="
set "fresh="
set "share="
set "cache=%HOLDFAST_CACHE%"
if not defined cache set "cache=%~dp0holdfast-cache"
if "%cache%"=="none" goto start
set "wanted="
for %%C in (check solve settle bump sheet rock new defaults) do if "%~1"=="%%C" set "wanted=%%C"
if not defined wanted goto start
if not exist "%cache%\" mkdir "%cache%" >nul 2>nul
set "key="
for %%J in ("%jar%") do for /f "tokens=1-3 delims=/.- " %%P in ("%%~tJ") do set "key=%%~zJ-%%P%%Q%%R"
for %%J in ("%java%") do for /f "tokens=1-3 delims=/.- " %%P in ("%%~tJ") do set "key=%key%-%%~zJ-%%P%%Q%%R"
set "archive=%cache%\%wanted%-%key%.jsa"
if exist "%archive%" (
  set share=-XX:SharedArchiveFile="%archive%"
  goto start
)
rem A machine that cannot write all of its archive ends with 1, whatever the command found: whether there is room is tried before.
set "fresh=%cache%\%wanted%-%key%.new%random%"
fsutil file createnew "%fresh%" 50000000 >nul 2>nul
if not exist "%fresh%" (
  set "fresh="
  goto start
)
del /q "%fresh%" >nul 2>nul
set share=-XX:ArchiveClassesAtExit="%fresh%"

:start
"%java%" %share% -Xlog:disable -Xlog:all=error:stderr -XX:+UseSerialGC %compiler% %HOLDFAST_JAVA_OPTS% -jar "%jar%" %*
set "code=%errorlevel%"
if defined fresh if exist "%fresh%" (
  del /f /q "%cache%\%wanted%-*.jsa" >nul 2>nul
  move /y "%fresh%" "%archive%" >nul 2>nul
  if exist "%fresh%" del /f /q "%fresh%" >nul 2>nul
)
if defined before chcp %before% >nul 2>nul
exit /b %code%
