-- Opens a house, breaks it, reads finding and hover, applies the fix. Prints one line of JSON; ends with an error when
-- anything is missing.
--   nvim --headless --clean -n -c "luafile neovim.lua"
-- Environment: HOUSE_NODE, HOUSE_SERVER, HOUSE_FILE, BREAK_FROM, BREAK_TO, FINDING (plain text in its message), FIX (in its title),
-- HOVER_AT (text to hover over).

local PATIENCE = 30000 -- ms

local function place_of(buffer, text)
  for row, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
    local from, to = line:find(text, 1, true)
    if from then return row - 1, from - 1, to end
  end
  error('the file does not hold: ' .. text)
end

local function await(what, condition)
  assert(vim.wait(PATIENCE, condition, 20), 'waited in vain: ' .. what)
end

local function finding_in(buffer)
  for _, finding in ipairs(vim.diagnostic.get(buffer)) do
    if finding.message:find(vim.env.FINDING, 1, true) then return finding end
  end
end

local function answer_of(responses)
  for _, response in pairs(responses or {}) do
    assert(not response.err, vim.inspect(response.err))
    if response.result then return response.result end
  end
end

local function hover(buffer)
  local row, column = place_of(buffer, vim.env.HOVER_AT)
  local parameters = {
    textDocument = vim.lsp.util.make_text_document_params(buffer),
    position = { line = row, character = column },
  }
  local result = answer_of(vim.lsp.buf_request_sync(buffer, 'textDocument/hover', parameters, PATIENCE))
  return result and result.contents.value
end

local function apply_fix(buffer, finding)
  local at = finding.user_data.lsp
  local range = {
    start = { line = finding.lnum, character = finding.col },
    ['end'] = { line = finding.end_lnum, character = finding.end_col },
  }
  local reported = { range = range, message = finding.message, severity = finding.severity, source = finding.source }
  for key, value in pairs(at) do reported[key] = value end
  local parameters = {
    textDocument = vim.lsp.util.make_text_document_params(buffer),
    range = range,
    context = { diagnostics = { reported } },
  }
  local actions = answer_of(vim.lsp.buf_request_sync(buffer, 'textDocument/codeAction', parameters, PATIENCE)) or {}
  for _, action in ipairs(actions) do
    if action.title:find(vim.env.FIX, 1, true) then
      if not action.edit then
        action = answer_of(vim.lsp.buf_request_sync(buffer, 'codeAction/resolve', action, PATIENCE))
      end
      vim.lsp.util.apply_workspace_edit(action.edit, 'utf-16')
      return action.title
    end
  end
  error('no such fix: ' .. vim.inspect(actions))
end

local function scenario()
  local file = vim.fn.fnamemodify(vim.env.HOUSE_FILE, ':p')
  vim.cmd('edit ' .. vim.fn.fnameescape(file))
  local buffer = vim.api.nvim_get_current_buf()
  vim.bo[buffer].filetype = 'house'
  local published = 0
  local client = vim.lsp.start_client({
    name = 'wattwright',
    cmd = { vim.env.HOUSE_NODE, vim.env.HOUSE_SERVER, '--stdio' },
    root_dir = vim.fn.fnamemodify(file, ':h'),
    handlers = {
      ['textDocument/publishDiagnostics'] = function(...)
        published = published + 1
        return vim.lsp.diagnostic.on_publish_diagnostics(...)
      end,
    },
  })
  assert(client, 'the server did not start')
  vim.lsp.buf_attach_client(buffer, client)
  await('the first findings', function() return published > 0 end)
  assert(not finding_in(buffer), 'the finding is there before the edit')

  local row, from, to = place_of(buffer, vim.env.BREAK_FROM)
  vim.api.nvim_buf_set_text(buffer, row, from, row, to, { vim.env.BREAK_TO })
  await('the finding', function() return finding_in(buffer) ~= nil end)
  local finding = finding_in(buffer)
  local line = vim.api.nvim_buf_get_lines(buffer, finding.lnum, finding.lnum + 1, false)[1]
  local shown = hover(buffer)
  local fix = apply_fix(buffer, finding)
  await('the finding goes', function() return finding_in(buffer) == nil end)

  local mended = vim.api.nvim_buf_get_lines(buffer, finding.lnum, finding.lnum + 1, false)[1]
  local report = { message = finding.message, line = line, hover = shown, fix = fix, mended = mended }
  io.stdout:write(vim.fn.json_encode(report) .. '\n')
  vim.lsp.stop_client(client)
  vim.wait(5000, function() return vim.lsp.client_is_stopped(client) end, 20)
end

local passed, fault = pcall(scenario)
if not passed then
  io.stderr:write(tostring(fault) .. '\n')
  vim.cmd('cquit 1')
end
vim.cmd('qall!')
