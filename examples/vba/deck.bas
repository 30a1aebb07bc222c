Attribute VB_Name = "Deck"
' Plans pontoon-boat decks from a spreadsheet's VBA, on 64-bit Windows, through deck_ffi.dll.
'
' Not run here: this project is tested on Linux, where there is no VBA, and the DLL is not built for Windows here either.
' What is tested is that each Declare below agrees with deck.h: name, count, order, width and kind of the arguments.
'
' To use it: build deck_ffi.dll on Windows (cargo build --release -p deck-ffi), put it beside the workbook or on the PATH,
' and import this file (File, Import File). Then =DeckLimits(...) works in cells, and the macro DeckOrder plans the job
' whose JSON stands in the active cell and lists what to buy below it.
'
' Only the functions in UTF-16 are declared for text: a VBA String is UTF-16, and a function in UTF-8 of which there is
' one in UTF-16 would need every text converted. Nothing else of deck.h is left out.
'
' How the types of deck.h are written: int32_t is Long, int64_t LongLong, double Double; size_t and every address
' are LongPtr. What is filled is ByRef; addresses of texts and buffers (StrPtr) and all else are ByVal. An argument called
' len in deck.h is called units here, as Len is VBA's own. A callback is the AddressOf a Public Function of a
' standard module, with ByVal arguments as deck.h says; it must not raise an error.
Option Explicit

#If Win64 Then

Public Const DECK_ABI_VERSION As Long = 1
Public Const DECK_OK As Long = 0
Public Const DECK_SHORT_BUFFER As Long = 3
Public Const DECK_UNKNOWN_POINTER As Long = 904

Public Declare PtrSafe Function deck_abi_version Lib "deck_ffi.dll" () As Long
Public Declare PtrSafe Function deck_last_error_count Lib "deck_ffi.dll" () As Long
Public Declare PtrSafe Function deck_last_error_utf16 Lib "deck_ffi.dll" ( _
    ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_last_error_at_utf16 Lib "deck_ffi.dll" ( _
    ByVal index As Long, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_last_error_pointer_utf16 Lib "deck_ffi.dll" ( _
    ByVal index As Long, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_status_text_utf16 Lib "deck_ffi.dll" ( _
    ByVal status As Long, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_job_schema_utf16 Lib "deck_ffi.dll" ( _
    ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long

Public Declare PtrSafe Function deck_plan_new_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByRef plan As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_free Lib "deck_ffi.dll" (ByVal plan As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_json_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_number_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal json_pointer As LongPtr, ByVal units As LongLong, ByRef value As Double) As Long
Public Declare PtrSafe Function deck_plan_count_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal json_pointer As LongPtr, ByVal units As LongLong, ByRef count As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_text_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal json_pointer As LongPtr, ByVal units As LongLong, _
    ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_quote_csv_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_views_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_svg_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal view As LongPtr, ByVal units As LongLong, _
    ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_plan_packet_utf16 Lib "deck_ffi.dll" ( _
    ByVal plan As LongPtr, ByVal path As LongPtr, ByVal units As LongLong) As Long

Public Declare PtrSafe Function deck_nest_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_nest_watched_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr, _
    ByVal progress As LongPtr, ByVal user As LongPtr) As Long
Public Declare PtrSafe Function deck_fill_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_fill_watched_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr, _
    ByVal progress As LongPtr, ByVal user As LongPtr) As Long
Public Declare PtrSafe Function deck_seams_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_panels_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_fasteners_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_survey_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_span_limits_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_beam_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_length_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long
Public Declare PtrSafe Function deck_plate_utf16 Lib "deck_ffi.dll" ( _
    ByVal json As LongPtr, ByVal units As LongLong, ByVal buf As LongPtr, ByVal cap As LongPtr, ByRef needed As LongPtr) As Long

' The number that DeckRaise raises: what went wrong is in its description.
Public Const DECK_FAILED As Long = vbObjectError + 513

' Everything that the last call found wrong, a line each.
Public Function DeckFaults() As String
    Dim index As Long, needed As LongPtr, buffer As String, faults As String
    For index = 0 To deck_last_error_count() - 1
        needed = 0
        If deck_last_error_at_utf16(index, 0, 0, needed) = DECK_SHORT_BUFFER Then
            buffer = String$(CLng(needed), vbNullChar)
            If deck_last_error_at_utf16(index, StrPtr(buffer), needed, needed) = DECK_OK Then
                faults = faults & IIf(index = 0, "", vbLf) & Left$(buffer, CLng(needed) - 1)
            End If
        End If
    Next index
    DeckFaults = faults
End Function

Private Sub DeckRaise(ByVal status As Long)
    If status <> DECK_OK Then Err.Raise DECK_FAILED, "Deck", DeckFaults()
End Sub

' Plans a job. The plan is the caller's, to be freed with deck_plan_free.
Public Function DeckPlan(ByVal job As String) As LongPtr
    Dim plan As LongPtr
    If deck_abi_version() <> DECK_ABI_VERSION Then Err.Raise DECK_FAILED, "Deck", "deck_ffi.dll is of another version."
    DeckRaise deck_plan_new_utf16(StrPtr(job), Len(job), plan)
    DeckPlan = plan
End Function

' A text of a plan, by a JSON pointer.
Public Function DeckPlanText(ByVal plan As LongPtr, ByVal pointer As String) As String
    Dim needed As LongPtr, status As Long, buffer As String
    status = deck_plan_text_utf16(plan, StrPtr(pointer), Len(pointer), 0, 0, needed)
    If status = DECK_SHORT_BUFFER Then
        buffer = String$(CLng(needed), vbNullChar)
        status = deck_plan_text_utf16(plan, StrPtr(pointer), Len(pointer), StrPtr(buffer), needed, needed)
    End If
    DeckRaise status
    DeckPlanText = Left$(buffer, CLng(needed) - 1)
End Function

' A number of a plan, by a JSON pointer, in the job's unit.
Public Function DeckPlanNumber(ByVal plan As LongPtr, ByVal pointer As String) As Double
    Dim value As Double
    DeckRaise deck_plan_number_utf16(plan, StrPtr(pointer), Len(pointer), value)
    DeckPlanNumber = value
End Function

' How much is in a list of a plan.
Public Function DeckPlanCount(ByVal plan As LongPtr, ByVal pointer As String) As Long
    Dim count As LongPtr
    DeckRaise deck_plan_count_utf16(plan, StrPtr(pointer), Len(pointer), count)
    DeckPlanCount = CLng(count)
End Function

' The allowable uniform loads of a panel, as JSON, for a cell:
' =DeckLimits("sanded plywood Group 1 A-A/A-C", "3/4", 24, "along", 3). What is wrong is the cell's text.
Public Function DeckLimits(ByVal series As String, ByVal rating As String, ByVal spacing As Double, _
                           ByVal axis As String, ByVal spans As Long) As String
    Dim request As String, needed As LongPtr, status As Long, buffer As String
    request = "{""panel"": {""series"": " & Quoted(series) & ", ""rating"": " & Quoted(rating) & "}, ""spacing"": " & _
              Figure(spacing) & ", ""axis"": " & Quoted(axis) & ", ""spans"": " & spans & "}"
    status = deck_span_limits_utf16(StrPtr(request), Len(request), 0, 0, needed)
    If status = DECK_SHORT_BUFFER Then
        buffer = String$(CLng(needed), vbNullChar)
        status = deck_span_limits_utf16(StrPtr(request), Len(request), StrPtr(buffer), needed, needed)
    End If
    If status = DECK_OK Then DeckLimits = Left$(buffer, CLng(needed) - 1) Else DeckLimits = DeckFaults()
End Function

' A number in JSON. Str$ writes a point in every country, and no zero before it, which JSON wants.
Private Function Figure(ByVal number As Double) As String
    Dim digits As String
    digits = Trim$(Str$(Abs(number)))
    If Left$(digits, 1) = "." Then digits = "0" & digits
    Figure = IIf(number < 0, "-", "") & digits
End Function

' A text in JSON.
Private Function Quoted(ByVal text As String) As String
    Quoted = """" & Replace(Replace(text, "\", "\\"), """", "\""") & """"
End Function

' Plans the job whose JSON stands in the active cell, and lists below it what to buy.
Public Sub DeckOrder()
    Dim cell As Object, plan As LongPtr, line As Long, pointer As String
    Set cell = Application.ActiveCell
    On Error GoTo Failed
    plan = DeckPlan(CStr(cell.Value))
    If DeckPlanCount(plan, "/layouts") = 0 Then
        cell.Offset(1, 0).Value = DeckPlanText(plan, "/no_layout/reason")
    Else
        For line = 0 To DeckPlanCount(plan, "/takeoff/lines") - 1
            pointer = "/takeoff/lines/" & line
            cell.Offset(line + 1, 0).Value = DeckPlanNumber(plan, pointer & "/buy")
            cell.Offset(line + 1, 1).Value = DeckPlanText(plan, pointer & "/unit")
            cell.Offset(line + 1, 2).Value = DeckPlanText(plan, pointer & "/description")
        Next line
    End If
    deck_plan_free plan
    Exit Sub
Failed:
    cell.Offset(1, 0).Value = Err.Description
    deck_plan_free plan
End Sub

#Else
' 32-bit Office calls by another convention (stdcall) than the DLL's functions have: there is nothing to declare.
#End If
