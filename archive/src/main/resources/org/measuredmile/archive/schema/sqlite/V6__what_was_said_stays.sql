-- What was said stays as it was said.

create trigger sentence_keeps_its_rows before update on sentence
begin select raise(abort, 'what was seen is never changed: add a row instead'); end;

create trigger sentence_keeps_all_rows before delete on sentence
begin select raise(abort, 'what was seen is never deleted'); end;
