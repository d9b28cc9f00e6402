; Offers Tailtrace under "Open with" for delimited captures, without making it the habit for them.

!macro tailtraceOpenWith extension
  WriteRegStr SHELL_CONTEXT "Software\Classes\${extension}\OpenWithProgids" "Tailtrace.Capture" ""
!macroend

!macro tailtraceForget extension
  DeleteRegValue SHELL_CONTEXT "Software\Classes\${extension}\OpenWithProgids" "Tailtrace.Capture"
!macroend

!macro customInstall
  WriteRegStr SHELL_CONTEXT "Software\Classes\Tailtrace.Capture" "" "Capture"
  WriteRegStr SHELL_CONTEXT "Software\Classes\Tailtrace.Capture\DefaultIcon" "" "$INSTDIR\${APP_EXECUTABLE_FILENAME},0"
  WriteRegStr SHELL_CONTEXT "Software\Classes\Tailtrace.Capture\shell\open\command" "" '"$INSTDIR\${APP_EXECUTABLE_FILENAME}" "%1"'
  !insertmacro tailtraceOpenWith ".csv"
  !insertmacro tailtraceOpenWith ".tsv"
  !insertmacro tailtraceOpenWith ".txt"
  !insertmacro tailtraceOpenWith ".log"
!macroend

!macro customUnInstall
  !insertmacro tailtraceForget ".csv"
  !insertmacro tailtraceForget ".tsv"
  !insertmacro tailtraceForget ".txt"
  !insertmacro tailtraceForget ".log"
  DeleteRegKey SHELL_CONTEXT "Software\Classes\Tailtrace.Capture"
!macroend
